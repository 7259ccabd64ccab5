import type { Totals } from '../../tree/noisy-max.ts';

/** Chance that something which is not on the list leaves a check looking healthy. */
const unlistedHealthy = 0.9;

/** Totals of a background that never shows the complaint. */
export const silentTotals = (results: number): Totals => Array.from({ length: results }, () => 1);

/** Totals of a cause that surely produces the last result. */
export const lastTotals = (results: number): Totals =>
  Array.from({ length: results }, (_, result) => (result === results - 1 ? 1 : 0));

/** Totals of what the unlisted cause produces: healthy mostly, the others evenly. */
export const unlistedTotals = (results: number): Totals =>
  Array.from({ length: results }, (_, result) =>
    result === results - 1 ? 1 : unlistedHealthy + ((1 - unlistedHealthy) * result) / (results - 1),
  );

/** Chance of producing at most this result; nothing lies below the healthiest one. */
export const atMost = (totals: Totals, result: number): number =>
  result < 0 ? 0 : (totals[result] ?? 1);
