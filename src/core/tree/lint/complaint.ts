import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';

/**
 * What the complaint's own test leaves unsaid, or says too much. A cause without a row there shows
 * the last result for certain: any other result would clear it, its own sign included.
 */
export function lintComplaint(tree: Tree, tell: Tell): void {
  const { confirm } = tree.complaint;
  const check = tree.checks[confirm];
  if (check === undefined) return;
  const last = check.results.at(-1);
  if (tree.format === 2)
    for (const [id, { name }] of Object.entries(tree.causes))
      if (!Object.hasOwn(check.points, id))
        tell({
          code: 'complaint-row-missing',
          path: `checks.${confirm}.shows-with.${id}`,
          value: id,
          message: `"${name}" has no row in the complaint's test: it would count as "${last?.label ?? ''}", always, and any other result would clear it.`,
          mend: `Say what the test shows with it; if it is that result for certain, {"always": "${last?.id ?? ''}"}.`,
        });
  if (check.background !== undefined)
    tell({
      code: 'complaint-background',
      path: `checks.${confirm}.background`,
      message:
        "The complaint's own test has a background: it would show the complaint on a vehicle with nothing wrong.",
      mend: 'Take it out: what shows the complaint has one of the causes, or an unlisted one.',
    });
}
