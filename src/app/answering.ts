import type { Action } from '../core/session/action.ts';
import type { Acted } from './act.ts';
import type { Asking } from './asking.ts';
import { doing, type Step } from './effect.ts';
import { walk } from './screen.ts';
import type { State } from './state.ts';

/** After an action that stood, the walk begins afresh; refused, it stays as it is. */
export const done = (acted: Acted): Step<State> =>
  acted.outcome.kind === 'refused'
    ? acted
    : doing({ ...acted.state, screen: walk }, ...acted.effects);

/** The action an answer is: a finding, a proof, or a correction of one. */
export function answering(
  asking: Asking,
  given: { readonly result?: string; readonly reading?: string; readonly insist?: boolean },
): Action {
  if (asking.purpose === 'correct') return { do: 'correct', n: asking.n ?? 0, ...given };
  if (asking.purpose === 'proof') return { do: 'prove', ...given };
  return { do: 'find', check: asking.id, ...given };
}
