import type { ActionOf } from '../action.ts';
import { leftComplaints } from '../complaints.ts';
import { accept, refuse, type Refused, type Ruling } from './ruling.ts';
import { leftUnasked } from '../../tree/way/after-repair.ts';
import { doneIn } from '../due.ts';
import { leftLines } from './left-open.ts';
import { isProven, lastRepair, triesSoFar } from '../proof.ts';
import { triageOf } from '../triage.ts';
import { apartName, apartNow } from '../apart/apart.ts';
import { currentLeg, type Story } from '../story.ts';

/** Ends the session. As fixed only with a good proof after the last repair, and never what only an inspection releases. */
export function close(action: ActionOf<'close'>, story: Story): Ruling {
  const why = notFixed(story);
  const as = action.as ?? (why === undefined ? 'fixed' : 'handed-on');
  const refused = as === 'fixed' ? why : undefined;
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
  const [open] = leftComplaints(story);
  if (open !== undefined)
    return refuse(
      'complaint-open',
      `Another complaint of this job is not proven gone: ${open.title}.`,
      'Go back to it, or close otherwise.',
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
