import { plainStep, type WayStep } from './way-steps.ts';

/** A way of more steps than this is told shorter. */
const longWay = 24;
/** Fewer than this in a row are not worth a box of their own. */
const fewestFolded = 3;
const shownFirst = 28;
const shownLast = 12;

/**
 * A way as long as a page can show it: in a long one, checks in a row that showed nothing are one step,
 * and of a very long one the middle is left out, and told so.
 */
export function shortened(steps: readonly WayStep[]): readonly WayStep[] {
  const folded = steps.length > longWay ? foldedRuns(steps) : steps;
  const left = folded.length - shownFirst - shownLast;
  if (left <= 1) return folded;
  const gone = folded.slice(shownFirst, -shownLast);
  return [
    ...folded.slice(0, shownFirst),
    {
      ...plainStep(gone[0]?.n ?? 0, 'gap', `${left} steps are left out here`),
      checks: countChecks(gone),
    },
    ...folded.slice(-shownLast),
  ];
}

/** How many checks and proofs steps stand for. */
export const countChecks = (steps: readonly WayStep[]): number =>
  steps.reduce((sum, { checks }) => sum + checks, 0);

const isPlain = ({ kind, healthy, trace }: WayStep): boolean =>
  kind === 'check' && healthy && trace === '';

function foldedRuns(steps: readonly WayStep[]): readonly WayStep[] {
  const runs: WayStep[][] = [];
  for (const step of steps) {
    const last = runs.at(-1);
    const [first] = last ?? [];
    if (last !== undefined && first !== undefined && isPlain(first) && isPlain(step))
      last.push(step);
    else runs.push([step]);
  }
  return runs.flatMap((run) => (run.length < fewestFolded ? run : [asOne(run)]));
}

const asOne = (run: readonly WayStep[]): WayStep => ({
  ...plainStep(run[0]?.n ?? 0, 'healthy checks', run.map(({ title }) => title).join(' · ')),
  checks: run.length,
});
