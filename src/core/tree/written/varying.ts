import * as z from 'zod';
import { When, type When as Condition } from '../basics.ts';
import type { Facts } from '../facts.ts';

/** A value that may hang on what the vehicle has: itself, or a list of them with the plain one last. */
export type Varying<T> = T | readonly (Alternative<T> | T)[];
type Alternative<T> = { readonly when: Condition; readonly is: T };

/** The zod model of a value that facts may flip: `[{"when": {"volts": "6-volt"}, "is": 5}, 11]`. */
export function varying<T extends z.ZodType>(value: T) {
  const alternative = z.strictObject({ when: When, is: value });
  return z.union([value, z.tuple([alternative], z.union([alternative, value]))]);
}

/** Whether something holds on some vehicles only: a result called "is" alone makes a row none. */
export const isAlternative = <T>(one: unknown): one is Alternative<T> =>
  typeof one === 'object' && one !== null && !Array.isArray(one) && 'when' in one && 'is' in one;

/** Whether a value is a list of alternatives, and no list that is itself the value. */
const isVaried = <T>(value: Varying<T>): value is readonly (Alternative<T> | T)[] =>
  Array.isArray(value) && isAlternative(value[0]);

/** Every value that may hold on some vehicle, each with its condition; the plain one has none. */
export function alternativesOf<T>(
  value: Varying<T>,
): readonly { readonly when?: Condition; readonly is: T }[] {
  if (!isVaried(value)) return [{ is: value as T }];
  return value.map((one) => (isAlternative<T>(one) ? one : { is: one }));
}

const wants = (when: Condition, facts: Facts, otherwise: boolean): boolean =>
  Object.entries(when).every(([fact, wanted]) => {
    const known = facts[fact];
    return known === undefined ? otherwise : [wanted].flat().includes(known);
  });

/**
 * The value on this vehicle: the first whose every fact is known and as it says, else the plain
 * one, else the first that nothing known speaks against; undefined where there is none.
 */
export function valueFor<T>(value: Varying<T>, facts: Facts): T | undefined {
  const all = alternativesOf(value);
  const fits = (otherwise: boolean) =>
    all.find(({ when }) => when !== undefined && wants(when, facts, otherwise));
  return (fits(false) ?? all.find(({ when }) => when === undefined) ?? fits(true))?.is;
}
