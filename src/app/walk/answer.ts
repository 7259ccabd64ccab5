import type { Action } from '../../core/session/action.ts';
import { holdsBefore } from '../../core/session/safeguard.ts';
import { waitsFor, type Waited } from '../../core/session/rules/check.ts';
import { failedProof } from '../../core/session/proof.ts';
import type { Story } from '../../core/session/story.ts';
import { takeAction, type ActionTaken } from '../take-action.ts';
import type { AskedCheck } from './question.ts';
import { inform, object, show, type Transition, transition } from '../effect.ts';
import { failedProofWords } from '../wording.ts';
import { ready, walk, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

/**
 * After an action that stood, the walk begins afresh; refused, it stays as it is. A finding that
 * contradicts an earlier one is never let pass: it is asked what that is.
 */
export function afterAction(acted: ActionTaken): Transition {
  if (acted.outcome.kind === 'refused') return acted;
  const screen: Screen = acted.outcome.contradicts ? { kind: 'contradiction', cursor: -1 } : walk;
  const { session } = acted.state;
  const failed = session && failedProof(session.story);
  if (session === undefined || failed?.n !== acted.outcome.n)
    return transition({ ...acted.state, screen }, ...acted.effects);
  const told = inform({ ...acted.state, screen }, failedProofWords(session.story));
  return transition(told.state, ...acted.effects);
}

/** Begins a check that was picked; one that a safeguard holds back shows what comes first. */
export function chooseCheck(state: State, story: Story, check: string): Transition {
  if (holdsBefore(story, { kind: 'check', check }).length > 0)
    return show(state, { kind: 'walk', input: ready, pickedCheck: check });
  const [waited] = waitsFor(story, check);
  return waited === undefined
    ? afterAction(takeAction(state, { do: 'begin', check }))
    : goToWaited(state, story, waited);
}

/**
 * A check that could not be judged is not made: what it waits for stands on the walk in its place,
 * or, where that has shown something else than good, the list stays with a word why.
 */
function goToWaited(state: State, story: Story, { check, seen, words }: Waited): Transition {
  if (seen) return object(state, { message: words, mend: 'It has not: choose another check.' });
  const { state: next, effects } = chooseCheck(state, story, check);
  const notice = { kind: 'info' as const, text: `${words} It comes first.` };
  return { state: next.notice?.kind === 'problem' ? next : { ...next, notice }, effects };
}

/** The action an answer is: a finding, a proof, or a correction of one. */
export function answerAction(
  asked: AskedCheck,
  given: { readonly result?: string; readonly reading?: string; readonly insist?: boolean },
): Action {
  if (asked.purpose === 'correct') return { do: 'correct', n: asked.n, ...given };
  if (asked.purpose === 'proof') return { do: 'prove', ...given };
  return { do: 'find', check: asked.id, ...given };
}
