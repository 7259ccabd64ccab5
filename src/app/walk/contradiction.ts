import { contradiction, newFault, type Contradiction } from '../../core/session/contradiction.ts';
import { act } from '../act.ts';
import { done } from './answer.ts';
import { contradictionLines } from './contradiction-lines.ts';
import { moved, picked } from '../keys/cursor.ts';
import { doing, still, type Step } from '../effect.ts';
import type { Press } from '../keys/press.ts';
import { ready, walk, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

type At = Extract<Screen, { kind: 'contradiction' }>;

export function updateContradiction(state: State, screen: At, press: Press): Step<State> {
  const found = state.live && contradiction(state.live.story);
  if (found === undefined || press.command === 'go-back') return still({ ...state, screen: walk });
  const index = picked(screen.cursor, press, contradictionLines.length);
  const line = index === undefined ? undefined : contradictionLines[index];
  if (line !== undefined) return settle(state, line.is, found);
  const cursor = moved(screen.cursor, press.command, contradictionLines.length);
  return still({ ...state, screen: { ...screen, cursor } });
}

function settle(
  state: State,
  is: (typeof contradictionLines)[number]['is'],
  { check, earlier, later }: Contradiction,
): Step<State> {
  if (is === 'new') return done(act(state, { do: 'note', text: newFault, about: check }));
  if (is === 'no-repeat') return withdrawBoth(state, { check, earlier, later });
  const { n } = is === 'misread' ? later : earlier;
  return still({ ...state, screen: { kind: 'walk', input: ready, correcting: n } });
}

/** Neither counts: both are withdrawn, and the check is kept as one that could not be told. */
function withdrawBoth(state: State, { check, earlier, later }: Contradiction): Step<State> {
  const reason = 'It does not repeat.';
  const first = act(state, { do: 'correct', n: later.n, withdraw: true, reason });
  const second = act(first.state, { do: 'correct', n: earlier.n, withdraw: true, reason });
  const third = done(act(second.state, { do: 'unsure', check }));
  return doing(third.state, ...first.effects, ...second.effects, ...third.effects);
}
