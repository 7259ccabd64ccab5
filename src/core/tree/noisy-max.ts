import { at } from '../at.ts';
import { sum } from '../sum.ts';

/**
 * Running totals of a check's results, after the noisy-MAX model: every present cause and the
 * background each produce one result, and the check shows the highest. `totals[r]` is the
 * chance that the producer alone stays at result r or healthier.
 */
export type Totals = readonly number[];

/** Least chance of an abnormal result without any cause, and of a cause missing its check. */
export const floor = 0.005;

/** Running totals of a row, scaled to end at exactly 1. */
function runningTotals(row: readonly number[]): number[] {
  const all = sum(row);
  let soFar = 0;
  return row.map((chance, index) => {
    soFar += chance;
    return index === row.length - 1 ? 1 : Math.min(1, soFar / all);
  });
}

/** Totals of the background, each abnormal result at least at the floor, the rest healthy. */
export function backgroundTotals(
  background: readonly number[] | undefined,
  results: number,
): Totals {
  const row = background ?? [1, ...Array.from({ length: results - 1 }, () => 0)];
  const abnormal = row.slice(1);
  if (abnormal.every((chance) => chance >= floor)) return runningTotals(row);
  const lifted = abnormal.map((chance) => Math.max(floor, chance));
  return runningTotals([Math.max(floor, 1 - sum(lifted)), ...lifted]);
}

/**
 * Totals of what a cause itself produces, from the row of a vehicle with that cause alone:
 * min(1, row total / background total), made non-decreasing. A row [0.2, 0.8] over a
 * background [0.9, 0.1] gives [0.2222, 1].
 */
export function producedTotals(row: readonly number[], background: Totals, least: number): Totals {
  let before = least;
  return runningTotals(row).map((total, result) => {
    const under = at(background, result);
    before = Math.max(before, under > 0 ? Math.min(1, total / under) : 1);
    return result === row.length - 1 ? 1 : before;
  });
}
