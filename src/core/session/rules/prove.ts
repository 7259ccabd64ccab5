import { at } from '../../at.ts';
import type { Check } from '../../tree/model.ts';
import type { ActionOf } from '../action.ts';
import { readAnswer } from '../answer.ts';
import { askedNow, type Answered } from '../answered.ts';
import { accept, refuse, refuseUnknown, type Ruling } from './ruling.ts';
import { impliedPayloads } from '../preparation.ts';
import { lastRepair, proofsOfRepair } from '../proof.ts';
import { notBackWords } from '../apart/before-proof.ts';
import { checkOf, toldAt, wordsOf } from './lookup.ts';
import { currentLeg, type Story } from '../story.ts';

/** The complaint's own test after a repair: good when it shows its first result. */
export function prove(action: ActionOf<'prove'>, story: Story): Ruling {
  const { tree } = currentLeg(story);
  const id = tree.complaint.confirm;
  const check = checkOf(story, id);
  if (check === undefined) return refuseUnknown('check', id, Object.keys(tree.checks));
  if (action.check !== undefined && action.check !== id)
    return refuse(
      'not-the-proof',
      `The proof is the complaint's own test, "${id}".`,
      `Record "${action.check}" with find, then prove with "${id}".`,
      action.check,
    );
  const repaired = lastRepair(story);
  if (repaired === undefined)
    return refuse(
      'no-repair',
      'There is nothing to prove: no repair has been made.',
      'Record the repair first.',
    );
  if (proofsOfRepair(story).some(({ good }) => !good))
    return refuse(
      'already-proved',
      'The last repair has been put to the proof already, and failed it.',
      'Go on with the checks, or correct the proof if it was misread.',
    );
  const answered = readAnswer(askedNow(story, id, check), action);
  if (answered.kind === 'refused') return answered;
  return accept(
    [
      ...impliedPayloads(story, check),
      { kind: 'proved', ...asProof(check, answered), ...wordsOf(action), ...toldAt(action) },
    ],
    stillApart(story),
  );
}

/** What was not so when the complaint showed, where nobody has said why the proof goes on with it. */
function stillApart(story: Story): readonly string[] {
  const words = notBackWords(story);
  return words.length === 0
    ? []
    : [
        `Proved although not all is back. ${words.join('; ')}. Say why before it, with leave-apart.`,
      ];
}

/**
 * What an answer says as a proof, which shows good or does not. The complaint is told by its own
 * test, so a reading proves what it stands at, however near the limit it lies; an answer that says
 * "one of two" without a reading proves nothing.
 */
export function asProof(
  { results }: Check,
  { shown, index }: Extract<Answered, { kind: 'shown' }>,
) {
  if (shown.orResult === undefined || shown.reading === undefined)
    return { ...shown, good: index === 0 && shown.orResult === undefined };
  const { orResult: _, ...rest } = shown;
  return { ...rest, result: at(results, index).id, good: index === 0 };
}
