import { at } from '../../at.ts';
import type { Tell } from '../../problem.ts';
import type { Check, Tree } from '../model.ts';

/** Results that hide others and are not last, and bad results that name a cause which they speak against. */
export function lintResults(tree: Tree, tell: Tell): void {
  for (const [id, check] of Object.entries(tree.checks)) {
    lintMasking(check, `checks.${id}`, tell);
    const isTold = Object.keys(check.points).length > 0 && id !== tree.complaint.confirm;
    if (isTold) lintNamed(tree, check, `checks.${id}`, tell);
  }
}

/** A label that says that nothing at all is there: whatever else is wrong does not show. */
const nothing =
  /^(dead|none|nothing|silent|no (sign of life|reaction|reading|response)|does nothing)\b/i;

/** What shows all the same, since it comes out by itself: wet, smoke, a fuse that blows. */
const comesOut =
  /\b(wet|drip\w*|dribbl\w*|leak\w*|blow\w*|smok\w*|smell\w*|bright|spark\w*|boil\w*|bang\w*|hot|only where|cannot)\b/i;

/**
 * With two faults the later-listed result is what one sees, and of a dead thing one sees nothing
 * milder. Bands stand in the order of their limits and are left alone.
 */
function lintMasking({ results }: Check, path: string, tell: Tell): void {
  results.forEach(({ id, label, from, below }, index) => {
    if (index === 0 || from !== undefined || below !== undefined || !nothing.test(label)) return;
    const hidden = results
      .slice(index + 1)
      .find((one) => !nothing.test(one.label) && !comesOut.test(one.label));
    if (hidden !== undefined)
      tell({
        code: 'masking-not-last',
        path: `${path}.results[${index}]`,
        value: id,
        message: `"${label}" hides "${hidden.label}", which is listed after it: with both faults there one sees the first.`,
        mend: `List "${id}" after "${hidden.id}".`,
      });
  });
}

/**
 * A bad result names a cause that shows it no more often than a sound vehicle does. One that only
 * goes on as the healthier results do names it since the others are ruled out; a lead that hangs on
 * other findings rests on those.
 */
function lintNamed({ causes }: Tree, check: Check, path: string, tell: Tell): void {
  const { results, background, points } = check;
  results.forEach(({ id, label, next }, index) => {
    if (background?.length !== results.length || next?.startsWith('cause:') !== true) return;
    if (results.slice(0, index).every((one) => one.next === next)) return;
    const cause = next.slice('cause:'.length);
    const row = points[cause] ?? background;
    if (row.length !== results.length || !Object.hasOwn(causes, cause)) return;
    const [chance, sound] = [at(row, index), at(background, index)];
    if (chance > sound) return;
    tell({
      code: 'named-by-less',
      path: `${path}.results[${index}].next`,
      value: id,
      message: `"${label}" names "${next}", which shows it on ${percent(chance)} of 100, and ${percent(sound)} of 100 sound vehicles show it too.`,
      mend: 'Lead to a check that shows the cause, or mend its row here.',
    });
  });
}

const percent = (chance: number): string => String(Number((100 * chance).toPrecision(2)));
