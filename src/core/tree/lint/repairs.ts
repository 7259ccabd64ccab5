import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';

/** Repairs that are tested by a check which cannot show them, or bought for unseen. */
export function lintRepairs(tree: Tree, tell: Tell): void {
  for (const [id, { repair, name }] of Object.entries(tree.causes)) {
    for (const [index, check] of repair.then.entries())
      if (!shows(tree, check, id))
        tell({
          code: 'then-shows-nothing',
          path: `causes.${id}.repair.then[${index}]`,
          value: check,
          message: `"${name}" does not show in this check, so that repeating it proves nothing.`,
          mend: 'Name a check that the cause shows in, or give it a row there.',
        });
    if (tree.format === 2) lintBought(tree, id, tell);
  }
}

/** What is bought is looked at before. */
function lintBought({ causes, checks }: Tree, id: string, tell: Tell): void {
  const cause = causes[id];
  if (cause === undefined) return;
  const { name, repair } = cause;
  const path = `causes.${id}.repair`;
  const isSeen = Object.values(checks).some((check) => check['looks-at']?.includes(id));
  const isBought = repair.part === 'dear' || repair.part === 'small';
  if (isBought && repair.try !== true && !isSeen)
    tell({
      code: 'bought-unseen',
      path: `${path}.part`,
      value: repair.part ?? '',
      message: `A part is bought for "${name}", and no check looks at that very part.`,
      mend: 'Write "looks-at" in the check that does, or add one.',
    });
}

/** Whether a check has a row for a cause, or gets one from the circuit of the feed path. */
function shows(tree: Tree, id: string, cause: string): boolean {
  const check = tree.checks[id];
  if (check === undefined || id === tree.complaint.confirm) return true;
  // A check without any row tells nothing at all, which is told by itself.
  if (check.feed === undefined && Object.keys(check.points).length === 0) return true;
  const isOnPath = tree.causes[cause]?.fault !== undefined;
  return Object.hasOwn(check.points, cause) || (check.feed !== undefined && isOnPath);
}
