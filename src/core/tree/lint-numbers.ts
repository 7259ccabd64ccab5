import type { Tell } from '../problem.ts';
import type { Check, Tree } from './model.ts';

/** Nothing is proved impossible by one reading: the least chance of an abnormal result, and of missing. */
const floor = 0.005;
const slack = 1e-9;

/** Rows that cannot be meant so: too sure, healthier than a sound vehicle, or saying nothing. */
export function lintNumbers(tree: Tree, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks)) {
    const path = `checks.${id}`;
    if (id !== tree.complaint.confirm) lintCheck(check, path, tell);
  }
}

function lintCheck(check: Check, path: string, tell: Tell): void {
  const { background, points } = check;
  if (Object.keys(points).length === 0 && check.feed === undefined)
    tell({
      code: 'moves-nothing',
      path: `${path}.points`,
      message: 'No result of this check moves any suspect.',
      mend: 'Say what a cause would show here, or leave the check out.',
    });
  background?.forEach((chance, at) => {
    if (chance < floor - slack)
      tell({
        code: 'too-sure',
        path: `${path}.background[${at}]`,
        value: String(chance),
        message: 'A result that a sound vehicle can never show would prove a fault by itself.',
        mend: `Give it at least ${floor}.`,
      });
  });
  for (const [cause, row] of Object.entries(points)) {
    const here = `${path}.points.${cause}`;
    if ((row[0] ?? 0) < floor - slack)
      tell({
        code: 'too-sure',
        path: `${here}[0]`,
        value: String(row[0]),
        message: 'A cause that this check can never miss would be cleared by one misreading.',
        mend: `Leave at least ${floor} for missing it.`,
      });
    if (background !== undefined) lintRow(row, background, here, tell);
  }
}

/** A row whose running total is above the background's cannot come of adding a fault. */
function lintRow(
  row: readonly number[],
  background: readonly number[],
  path: string,
  tell: Tell,
): void {
  let [rowTotal, soundTotal] = [0, 0];
  for (const [at, chance] of row.entries()) {
    rowTotal += chance;
    soundTotal += background[at] ?? 0;
    if (rowTotal <= soundTotal + slack) continue;
    tell({
      code: 'healthier-than-sound',
      path: `${path}[${at}]`,
      value: JSON.stringify(row),
      message: 'With this cause the check would look healthier than on a sound vehicle.',
      mend: 'Lower this row on the healthy side, or raise the background there.',
    });
    return;
  }
}
