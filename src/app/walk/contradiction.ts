import {
  lastContradiction,
  newFault,
  type Contradiction,
} from '../../core/session/contradiction.ts';
import { takeAction } from '../take-action.ts';
import { afterAction } from './answer.ts';
import { moved, picked } from '../keys/cursor.ts';
import { show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { ready, walk, type At } from '../screen.ts';
import type { State } from '../state.ts';

/** What a contradiction can be; the program never settles it by itself. */
export const contradictionLines = [
  { is: 'misread', label: 'the last one was misread: answer it anew' },
  { is: 'misread-before', label: 'the one before was misread: answer that anew' },
  { is: 'new', label: 'something new has gone wrong since' },
  { is: 'no-repeat', label: 'it does not repeat: neither counts' },
] as const;

export const contradictionPage: Page<'contradiction'> = { mode: () => 'list', update };

function update(state: State, screen: At<'contradiction'>, press: KeyPress): Transition {
  const found = state.session && lastContradiction(state.session.story);
  if (found === undefined || press.command === 'go-back') return show(state, walk);
  const line = picked(screen.cursor, press, contradictionLines);
  if (line !== undefined) return settle(state, line.is, found);
  const cursor = moved(screen.cursor, press.command, contradictionLines.length);
  return show(state, { ...screen, cursor });
}

function settle(
  state: State,
  is: (typeof contradictionLines)[number]['is'],
  found: Contradiction,
): Transition {
  const { check, earlier, later } = found;
  if (is === 'new')
    return afterAction(takeAction(state, { do: 'note', text: newFault, about: check }));
  if (is === 'no-repeat') return withdrawBoth(state, found);
  const { n } = is === 'misread' ? later : earlier;
  return show(state, { kind: 'walk', input: ready, correcting: n });
}

/** Neither counts: both are withdrawn, and the check is kept as one that could not be told. */
function withdrawBoth(state: State, { check, earlier, later }: Contradiction): Transition {
  const reason = 'It does not repeat.';
  const first = takeAction(state, { do: 'correct', n: later.n, withdraw: true, reason });
  const second = takeAction(first.state, { do: 'correct', n: earlier.n, withdraw: true, reason });
  const third = afterAction(takeAction(second.state, { do: 'unsure', check }));
  return transition(third.state, ...first.effects, ...second.effects, ...third.effects);
}
