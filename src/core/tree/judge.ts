import { withoutDust } from '../trade/dust.ts';
import { edgesOf } from './limits.ts';
import type { Check } from './model.ts';

/**
 * Finds the band a reading falls in. Floating-point dust counts for nothing: a reading that a
 * correction brings to its limit stands on the limit.
 * @param value the reading in the check's own unit, at reference conditions
 * @returns the index of the result; beyond all bands it is the nearest one's
 */
export function judge(check: Check, value: number): number {
  const clean = withoutDust(value);
  const index = check.results
    .map(edgesOf)
    .findIndex(({ from, below }) => clean >= from && clean < below);
  return index >= 0 ? index : nearestBand(check, clean);
}

/** A value on the very top of the range, or beyond it, belongs to the band that lies nearest. */
function nearestBand(check: Check, value: number): number {
  const gaps = check.results
    .map(edgesOf)
    .map(({ from, below }) => (value < from ? from - value : Math.max(0, value - below)));
  return gaps.indexOf(Math.min(...gaps));
}
