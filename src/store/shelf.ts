import { Header } from '../core/session/header/header.ts';

/**
 * Trees and shops of headers that were read before, by their own text: where many sessions are read in
 * one go, most were walked by the same few trees, and what stands for one serves for all.
 */
export type Shelf = Map<string, Pick<Header, 'trees' | 'shop'>>;

/** The longest that a shelf grows: trees that were each changed for a job are not all kept. */
const most = 200;

/** A header as its model reads it; undefined where it is none. */
export function shelved(value: unknown, shelf: Shelf): Header | undefined {
  const key = keyOf(value);
  const known = key === undefined ? undefined : shelf.get(key);
  const read = Header.safeParse(known === undefined ? value : { ...(value as Header), ...bare });
  if (!read.success) return undefined;
  if (known !== undefined) return { ...read.data, ...known };
  const { trees, shop } = read.data;
  if (key !== undefined && shelf.size < most) shelf.set(key, { trees, shop });
  return read.data;
}

/** Stands for what is known already while the rest of a header is read. */
const bare = { trees: {}, shop: { format: 1, cautions: {}, tools: {}, accesses: {} } };

function keyOf(value: unknown): string | undefined {
  if (typeof value !== 'object' || value === null || !('trees' in value) || !('shop' in value))
    return undefined;
  return JSON.stringify([value.trees, value.shop]);
}
