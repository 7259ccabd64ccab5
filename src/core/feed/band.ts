import { at } from '../at.ts';

/** A stretch of readings; `from` belongs to it, `below` does not. Left out: no end on that side. */
export type Band = { readonly from?: number | undefined; readonly below?: number | undefined };

/** A normal distribution of what the meter shows. */
export type Shown = { readonly mean: number; readonly deviation: number };

/** No result is proved impossible by one reading. */
const least = 0.005;

/** Chance of each band, for a mixture of normals; what falls outside every band is shared out. */
export function bandChances(
  bands: readonly Band[],
  mixture: readonly (Shown & { readonly weight: number })[],
): readonly number[] {
  const chances = bands.map((band) =>
    mixture.reduce((sum, shown) => sum + shown.weight * chanceIn(band, shown), 0),
  );
  const total = chances.reduce((sum, chance) => sum + chance, 0);
  return total > 0 ? chances.map((chance) => chance / total) : chances.map(() => 1 / bands.length);
}

function chanceIn({ from, below }: Band, { mean, deviation }: Shown): number {
  if (deviation === 0)
    return (from === undefined || mean >= from) && (below === undefined || mean < below) ? 1 : 0;
  const upTo = below === undefined ? 1 : normalBelow((below - mean) / deviation);
  return upTo - (from === undefined ? 0 : normalBelow((from - mean) / deviation));
}

/**
 * P(Z < z) of the standard normal, to 1.5e-7. Source: Abramowitz and Stegun 7.1.26 (from memory).
 * Worked example: P(Z < 1.96) = 0.975.
 */
export function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + 0.3275911 * x);
  const series =
    t *
    (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  const tail = (series * Math.exp(-x * x)) / 2;
  return z < 0 ? tail : 1 - tail;
}

/** Raises every entry to the least allowed, at the cost of the largest. */
export function raised(row: readonly number[]): readonly number[] {
  const lifted = row.map((chance) => Math.max(chance, least));
  const over = lifted.reduce((sum, chance) => sum + chance, 0) - 1;
  const largest = lifted.indexOf(Math.max(...lifted));
  return lifted.map((chance, at) => (at === largest ? chance - over : chance));
}

/**
 * A cause's row beside the background: raised, and nowhere healthier than the background, since the
 * check shows the worse of what the cause and the background produce.
 */
export function beside(background: readonly number[], row: readonly number[]): readonly number[] {
  const totals = (of: readonly number[]): readonly number[] =>
    of.map((_chance, at) => of.slice(0, at + 1).reduce((sum, chance) => sum + chance, 0));
  const allowed = totals(background);
  const capped = totals(raised(row)).map((total, band) => Math.min(total, at(allowed, band)));
  return capped.map((total, band) => (band === 0 ? total : total - at(capped, band - 1)));
}
