import * as z from 'zod';
import { Id, Minutes } from '../basics.ts';
import { varying } from '../written/varying.ts';

const Odds = z.number().min(0).max(1e6);

/**
 * What a tree carries whose odds and minutes were moved to somebody's own jobs: from how many jobs, what
 * the tree's own word weighed against them, and that word, so that it can be told and counted again.
 */
export const Counted = z.strictObject({
  /** Jobs that were proven to be one of its causes. */
  jobs: z.number().min(0),
  /** The tree's odds weigh as much as so many jobs. */
  weight: z.number().positive(),
  /** The odds as the tree was written: of its causes, and of what is not on its list. */
  odds: z.record(Id, varying(Odds)),
  unlisted: Odds,
  /** Its minutes of a check weigh as much as so many checks. */
  minutesWeight: z.number().positive(),
  /** The minutes as the tree was written, of each check that was measured, and how often it was. */
  checks: z.record(
    Id,
    z.strictObject({ times: z.number().int().min(1), minutes: varying(Minutes) }),
  ),
});

export type Counted = z.output<typeof Counted>;

export type VariedNumber = z.output<ReturnType<typeof varying<z.ZodNumber>>>;

/** A number that facts may flip, each of its values put otherwise. */
export function varied(value: VariedNumber, change: (one: number) => number): VariedNumber {
  if (typeof value === 'number') return change(value);
  const [first, ...rest] = value;
  return [
    { ...first, is: change(first.is) },
    ...rest.map((one) => (typeof one === 'number' ? change(one) : { ...one, is: change(one.is) })),
  ];
}
