import { withoutDust } from '../trade/dust.ts';
import { usualUncertainty } from '../trade/units/uncertainty.ts';
import { edgesOf } from './limits.ts';
import type { Check, Reading } from './model.ts';

/** A value in the unit of its check, with the ends that the error of its meter leaves open. */
export type Measured = { readonly value: number; readonly low: number; readonly high: number };

/** What a check showed, as places among its results: the one it stands in, and those it may be. */
export type Judged = { readonly stands: number; readonly lo: number; readonly hi: number };

type Meter = Pick<Reading, 'quantity' | 'unit' | 'uncertainty'>;

/** How far off a value may be, in the reading's unit: as the tree says, else what is usual. */
export const uncertaintyOf = ({ quantity, unit, uncertainty }: Meter, value: number): number =>
  uncertainty ?? (Number.isFinite(value) ? usualUncertainty(quantity, value, unit) : 0);

/** A single reading, in the reading's unit, with its error. */
export function measured(meter: Meter, value: number): Measured {
  const error = uncertaintyOf(meter, value);
  return { value, low: value - error, high: value + error };
}

/**
 * Finds the bands that a value may lie in. Its own band is the one it stands in; a band whose edge
 * lies within the error counts as well. Where the results between the two are no neighbors of them
 * in degree, they are counted too: a finding is one stretch of the list.
 */
export function judge(check: Check, { value, low, high }: Measured): Judged {
  const stands = bandOf(check, value);
  const [least, most] = [withoutDust(low), withoutDust(high)];
  const reached = check.results.flatMap((result, index) => {
    const { from, below } = edgesOf(result);
    return least < most && from <= most && below >= least ? [index] : [];
  });
  return { stands, lo: Math.min(stands, ...reached), hi: Math.max(stands, ...reached) };
}

/**
 * Finds the band a value stands in. Floating-point dust counts for nothing: a reading that a
 * correction brings to its limit stands on the limit.
 * @param value the reading in the check's own unit, at reference conditions; Infinity for a meter
 *   that shows nothing but that its range is exceeded
 * @returns the index of the result; beyond all bands it is the nearest one's
 */
export function bandOf(check: Check, value: number): number {
  const bands = check.results.map(edgesOf);
  if (!Number.isFinite(value)) return outermostBand(bands, value);
  const clean = withoutDust(value);
  const index = bands.findIndex(({ from, below }) => clean >= from && clean < below);
  return index >= 0 ? index : nearestBand(bands, clean);
}

type Bands = readonly ReturnType<typeof edgesOf>[];

function outermostBand(bands: Bands, value: number): number {
  const ends = value > 0 ? bands.map(({ below }) => below) : bands.map(({ from }) => -from);
  return ends.indexOf(Math.max(...ends));
}

/** A value on the very top of the range, or beyond it, belongs to the band that lies nearest. */
function nearestBand(bands: Bands, value: number): number {
  const gaps = bands.map(({ from, below }) =>
    value < from ? from - value : Math.max(0, value - below),
  );
  return gaps.indexOf(Math.min(...gaps));
}
