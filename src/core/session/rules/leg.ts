import type { ActionOf } from '../action.ts';
import { accept, refuse, type Refused, type Ruling, type World } from './ruling.ts';
import { leftUnasked } from '../../tree/way/after-repair.ts';
import { doneIn } from '../due.ts';
import { leftLines } from './left-open.ts';
import { isProven, lastRepair, triesSoFar } from '../proof.ts';
import { fileOf } from '../../tree/written/settle.ts';
import { shopOf } from '../header/header.ts';
import { triageOf } from '../triage.ts';
import { apartName, apartNow } from '../apart/apart.ts';
import { currentLeg, type Story } from '../story.ts';

/** Goes on with another complaint's tree in the same session; findings and accesses go along. */
export function leg(action: ActionOf<'leg'>, story: Story, world: World): Ruling {
  const found = world.tree(action.tree);
  if (found === undefined)
    return refuse(
      'unknown-tree',
      `There is no tree "${action.tree}" in the library.`,
      'See "droplight trees list".',
      action.tree,
    );
  if (currentLeg(story).tree.id === action.tree)
    return refuse(
      'same-tree',
      `"${action.tree}" is the tree that is being walked.`,
      'Go on with it.',
      action.tree,
    );
  return accept([
    {
      kind: 'leg',
      tree: action.tree,
      whole: fileOf(found.tree),
      shop: shopOf(found.tree, found.shop),
      ...(action.reason !== undefined && { reason: action.reason }),
    },
  ]);
}

/** Ends the session. As fixed only with a good proof after the last repair, and never what only an inspection releases. */
export function close(action: ActionOf<'close'>, story: Story): Ruling {
  const releasable = isProven(story) && triageOf(story) === undefined;
  const as = action.as ?? (releasable ? 'fixed' : 'handed-on');
  const refused = as === 'fixed' ? notFixed(story) : undefined;
  if (refused !== undefined) return refused;
  const leftOpen = apartNow(story).map((thing) => apartName(story, thing));
  return accept(
    [
      {
        kind: 'closed',
        as,
        leftOpen,
        ...(action.text !== undefined && { text: action.text }),
      },
    ],
    leftLines(story),
  );
}

/** Takes up a closed session again; that it was closed stays in the record. */
export const reopen = (_: unknown, { closed }: Story): Ruling =>
  closed === undefined
    ? refuse('not-closed', 'This session is not closed.', 'Go on with it.')
    : accept([{ kind: 'reopened' }]);

/** Why a session may not be closed as fixed. */
function notFixed(story: Story): Refused | undefined {
  const triage = triageOf(story);
  if (triage !== undefined)
    return refuse(
      'for-inspection',
      `This is not closed as fixed: only an inspection releases it. Why: ${triage}`,
      'Close it as handed-on: to inspection.',
    );
  if (lastRepair(story) === undefined)
    return refuse('no-repair', 'Nothing has been repaired.', closeOtherwise);
  if (!isProven(story))
    return refuse(
      'no-proof',
      `It is not proven: ${triesSoFar(story) ?? "the complaint's own test has not shown good since the last repair"}.`,
      closeOtherwise,
    );
  const { tree } = currentLeg(story);
  const behind = leftUnasked(tree, doneIn(story))[0];
  return behind === undefined
    ? undefined
    : refuse(
        'reason-unasked',
        `What was mended had a reason, and nobody has looked for it: "${tree.checks[behind]?.ask ?? behind}"`,
        'Make that check, or pass it over with a reason; or close otherwise.',
        behind,
      );
}

const closeOtherwise = 'Repair and prove it, or close it as handed-on, given-up or not-reproduced.';
