import { at } from '../../at.ts';
import { showNumber } from '../../trade/units/units.ts';
import { edgesOf, limitOf } from '../limits.ts';
import type { BookLimit, Result } from '../model.ts';

/** Where the bands of a check meet, in its unit. */
export type Limits = readonly (number | BookLimit)[];
type Ends = Pick<Result, 'from' | 'below'>;

/** The results from the lowest reading up: as named, else as the limits run. */
function upward(
  results: readonly string[],
  limits: Limits,
  named?: readonly string[],
): readonly string[] {
  if (named !== undefined) return named;
  const [first, last] = [limitOf(limits.at(0) ?? 0), limitOf(limits.at(-1) ?? 0)];
  return limits.length > 1 && first < last ? results : results.toReversed();
}

/**
 * The ends of each result's band, by its id. The limits part the results from the lowest reading
 * up; a single limit has the healthy result above it, unless `named` says otherwise.
 */
export function endsOf(
  results: readonly string[],
  limits: Limits,
  named?: readonly string[],
): ReadonlyMap<string, Ends> {
  const order = upward(results, limits, named);
  const rising = limits.toSorted((one, other) => limitOf(one) - limitOf(other));
  return new Map(
    order.map((id, index): [string, Ends] => [
      id,
      {
        ...(index > 0 && rising[index - 1] !== undefined && { from: at(rising, index - 1) }),
        ...(rising[index] !== undefined && { below: at(rising, index) }),
      },
    ]),
  );
}

/** A band in words: `under 2 V`, `2 to 11.5 V`, `11.5 V or more`; a plain number has no unit. */
export function bandWords(ends: Ends, unit: string): string {
  const { from, below } = edgesOf(ends);
  const amount = (value: number): string => showNumber(value, 6);
  const named = unit === '1' ? '' : ` ${unit}`;
  if (from === -Infinity) return `under ${amount(below)}${named}`;
  if (below === Infinity) return `${amount(from)}${named} or more`;
  return `${amount(from)} to ${amount(below)}${named}`;
}

/**
 * What a result is called on the screens: the author's word with the band behind it, "dead, under
 * 2 V". A word that has a number of its own stands as it is.
 */
export function labelWith(word: string | undefined, ends: Ends, unit: string): string {
  if (word !== undefined && /\d/.test(word)) return word;
  const band = bandWords(ends, unit);
  return word === undefined ? band : `${word}, ${band}`;
}
