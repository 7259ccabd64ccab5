import type { Check, Reading } from './model.ts';

/** What a reading is worth: the index of its result, or too far out to believe at once. */
export type Judged =
  | { readonly kind: 'result'; readonly index: number }
  | { readonly kind: 'implausible'; readonly low: number; readonly high: number };

/**
 * Finds the band a reading falls in.
 * @param value the reading in the check's own unit, at reference conditions.
 * @returns the index of the result, also for a value outside the plausible range when insisted.
 */
export function judge(check: Check, reading: Reading, value: number, insisted = false): Judged {
  const [low, high] = reading.plausible;
  if (!insisted && (value < low || value > high)) return { kind: 'implausible', low, high };
  const index = check.results.findIndex(
    ({ from = -Infinity, below = Infinity }) => value >= from && value < below,
  );
  return { kind: 'result', index: index >= 0 ? index : nearestBand(check, value) };
}

/** A value on the very top of the range, or beyond it, belongs to the band that lies nearest. */
function nearestBand(check: Check, value: number): number {
  const gaps = check.results.map(({ from = -Infinity, below = Infinity }) =>
    value < from ? from - value : Math.max(0, value - below),
  );
  return gaps.indexOf(Math.min(...gaps));
}
