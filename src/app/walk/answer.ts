import type { Action } from '../../core/session/action.ts';
import { contradiction } from '../../core/session/contradiction.ts';
import type { Acted } from '../act.ts';
import type { Asking } from './question.ts';
import { doing, type Step } from '../effect.ts';
import { walk, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

/**
 * After an action that stood, the walk begins afresh; refused, it stays as it is. A finding that
 * contradicts an earlier one is never let pass: it is asked what that is.
 */
export function done(acted: Acted): Step<State> {
  if (acted.outcome.kind === 'refused') return acted;
  const { live } = acted.state;
  const found = live?.events.at(-1)?.kind === 'found';
  const screen: Screen =
    found && live !== undefined && contradiction(live.story) !== undefined
      ? { kind: 'contradiction', cursor: 0 }
      : walk;
  return doing({ ...acted.state, screen }, ...acted.effects);
}

/** The action an answer is: a finding, a proof, or a correction of one. */
export function answering(
  asking: Asking,
  given: { readonly result?: string; readonly reading?: string; readonly insist?: boolean },
): Action {
  if (asking.purpose === 'correct') return { do: 'correct', n: asking.n ?? 0, ...given };
  if (asking.purpose === 'proof') return { do: 'prove', ...given };
  return { do: 'find', check: asking.id, ...given };
}
