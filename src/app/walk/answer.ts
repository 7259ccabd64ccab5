import type { Token } from '../keys/tokens.ts';
import type { Action } from '../../core/session/action.ts';
import type { ActionTaken } from '../take-action.ts';
import type { AskedCheck } from './question.ts';
import { type Transition, transition } from '../effect.ts';
import { walk, type Screen } from '../screen.ts';

/**
 * After an action that stood, the walk begins afresh; refused, it stays as it is. A finding that
 * contradicts an earlier one is never let pass: it is asked what that is.
 */
export function afterAction(acted: ActionTaken, opener?: Token): Transition {
  if (acted.outcome.kind === 'refused') return acted;
  const screen: Screen = acted.outcome.contradicts
    ? { kind: 'contradiction', cursor: -1, ...(opener !== undefined && { opener }) }
    : walk;
  return transition({ ...acted.state, screen }, ...acted.effects);
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
