import { nearest } from '../../trade/units/nearest.ts';
import { keysOf, modelsAt } from './models.ts';
import type * as z from 'zod';

type Model = z.core.$ZodType;
type Path = readonly PropertyKey[];

/** Where the value of a key belongs that stands where it cannot. */
export type Home = {
  readonly kind: 'misspelt' | 'inner' | 'outer';
  readonly path: Path;
  /** A value stands there already. */
  readonly taken: boolean;
};

/** A value and the model that it was held against. */
export type Held = { readonly model: Model; readonly whole: unknown };

/** What stands at a path of a value; nothing where the path leads nowhere. */
export const valueAt = (whole: unknown, path: Path): unknown =>
  path.reduce<unknown>(
    (part, key) =>
      typeof part === 'object' && part !== null && Object.hasOwn(part, key)
        ? (part as Record<PropertyKey, unknown>)[key]
        : undefined,
    whole,
  );

/**
 * The place that an unknown key was meant for: a block inside or around its own that has a key of
 * that name, or a key of its own block that is spelt much like it and is not there.
 */
export function homeOf({ model, whole }: Held, block: Path, key: string): Home | undefined {
  const own = keysOf(modelsAt(model, block));
  const inner = own.find((one) => hasKey(model, [...block, one], key));
  const isTaken = (home: Path): boolean => valueAt(whole, home) !== undefined;
  const homeAt = (kind: Home['kind'], path: Path): Home => ({ kind, path, taken: isTaken(path) });
  if (inner !== undefined) return homeAt('inner', [...block, inner, key]);
  const free = own.filter((one) => !isTaken([...block, one]));
  const [near] = nearest(key, free);
  if (near !== undefined && sameKind(key, near)) return homeAt('misspelt', [...block, near]);
  for (let up = block.length - 1; up >= 0; up -= 1) {
    const outer = block.slice(0, up);
    if (hasKey(model, outer, key)) return homeAt('outer', [...outer, key]);
  }
  return undefined;
}

const hasKey = (model: Model, block: Path, key: string): boolean =>
  keysOf(modelsAt(model, block)).includes(key);

/** Slips leave most letters of a word; short words differ by too few to tell. */
const sameKind = (key: string, near: string): boolean =>
  key.length > 2 && (near.length > 3 || key[0] === near[0]);

/** An id as it may be written: small letters, digits and hyphens. */
export const asId = (text: string): string =>
  text
    .normalize('NFD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 64);

/** The number that a text gives, with a decimal comma or a unit as it may be. */
export function numberIn(text: string): number | undefined {
  const found = /^\s*(-?\d+(?:[.,]\d+)?)\s*[a-z%]*\s*$/i.exec(text)?.[1];
  return found === undefined ? undefined : Number(found.replace(',', '.'));
}

/**
 * A row in which every number with a decimal comma became two: 0,995 is read as 0 and 995.
 * @returns the first as it was meant
 */
export function splitByComma(row: readonly unknown[]): string | undefined {
  const whole = row.every((one) => typeof one === 'number' && Number.isInteger(one));
  const [first, second] = row;
  const alternate = row.every((one, index) => index % 2 === 1 || one === 0 || one === 1);
  return whole && alternate && row.length % 2 === 0 && row.length > 2
    ? `${String(first)}.${String(second)}`
    : undefined;
}
