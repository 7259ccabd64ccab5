import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { booksOf } from '../../tree/limits.ts';
import type { Tree } from '../../tree/model.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { Written } from '../../tree/written/written.ts';
import { Shop } from '../../tree/shop.ts';
import { Conditions } from '../kinds/shapes.ts';
import { Practice } from './practice.ts';
import { described, Odometer, Sheet } from '../vehicle/vehicle.ts';
import { freeText, programText } from '../free-text.ts';
import { unreadableBy } from '../read-event.ts';
import type { Problem } from '../../problem.ts';

/** The first line of a session file: everything that must be known before the first event. */
export const Header = z.object({
  format: z.literal(1),
  id: z.string().max(200),
  tool: z.string().max(100),
  opened: z.string().max(40),
  /** It is practice on a hidden fault, and no work on a vehicle. */
  practice: Practice.optional(),
  who: freeText(200),
  vehicle: z.object({
    name: freeText(500),
    ...described,
    odometer: Odometer.optional(),
    facts: z.record(Id, Id),
    sheet: Sheet.optional(),
  }),
  /** The complaint as its owner says it, where that was noted. */
  said: freeText(20_000).optional(),
  conditions: Conditions,
  units: z.enum(['us', 'metric']),
  /** The currency that a price without one is in: a code or a sign; left out where none was said. */
  currency: programText(3).optional(),
  /** The tree the session begins with, whole, so that the file can be read without its library. */
  tree: Id,
  trees: z.record(Id, Written),
  shop: Shop,
});

export type Header = z.output<typeof Header>;

/** Why the reader would not take a header back as it is written. */
export function unreadableHeader(header: Header): Problem | undefined {
  const read = Header.safeParse(JSON.parse(JSON.stringify(header)));
  return read.success ? undefined : unreadableBy(read.error.issues);
}

/** The part of the shop that a tree names. */
export function shopOf(tree: Tree, shop: Shop): Shop {
  const steps = [
    ...Object.values(tree.checks),
    ...Object.values(tree.causes).map(({ repair }) => repair),
  ];
  return {
    ...shop,
    // What will be named in own words may call for any of them.
    cautions: isOwn(tree)
      ? shop.cautions
      : only(
          shop.cautions,
          steps.flatMap(({ cautions }) => cautions),
        ),
    tools: only(
      shop.tools,
      steps.flatMap(({ tools }) => tools),
    ),
    accesses: only(
      shop.accesses,
      steps.flatMap(({ access }) => access),
    ),
    sources: {},
    book: only(
      shop.book,
      Object.values(tree.checks).flatMap(({ results }) => results.flatMap(booksOf)),
    ),
  };
}

const only = <T>(from: Readonly<Record<string, T>>, ids: readonly string[]): Record<string, T> =>
  Object.fromEntries(Object.entries(from).filter(([id]) => ids.includes(id)));
