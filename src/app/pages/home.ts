import { moved, picked } from '../keys/cursor.ts';
import { homeLines, type HomeLine } from './home-lines.ts';
import { type Transition, transition } from '../effect.ts';
import type { Screen } from '../screen.ts';
import { emptyForm } from './start-form.ts';
import type { SessionLine, State } from '../state.ts';
import { toFigures } from './figures.ts';
import type { KeyPress } from '../keys/press.ts';

type At<K extends Screen['kind']> = Extract<Screen, { kind: K }>;

export function updateHome(state: State, screen: At<'home'>, press: KeyPress): Transition {
  const lines = homeLines(state.sessions);
  const index = picked(screen.cursor, press, lines.length);
  const line = lineFor(press) ?? (index === undefined ? undefined : lines[index]);
  if (line !== undefined) return chooseLine(state, line);
  const cursor = moved(screen.cursor, press.command, lines.length);
  return transition({ ...state, screen: { kind: 'home', cursor } });
}

/** The line that a letter of its own stands for. */
function lineFor({ command }: KeyPress): HomeLine | undefined {
  if (command === 'read') return { kind: 'list' };
  return command === 'start' || command === 'settings' ? { kind: command } : undefined;
}

function chooseLine(state: State, line: HomeLine): Transition {
  switch (line.kind) {
    case 'pick-up':
      return pickUp(state, line.session);
    case 'start':
      return toStart(state);
    case 'list':
      return transition(
        { ...state, screen: { kind: 'sessions', cursor: 0 } },
        { kind: 'list-sessions' },
      );
    case 'figures':
      return toFigures(state);
    case 'settings':
      return transition({ ...state, screen: { kind: 'settings', cursor: 0 } });
    case 'quit':
      return transition({ ...state, leaving: true }, { kind: 'leave' });
  }
}

const pickUp = (state: State, { path }: SessionLine): Transition =>
  transition(state, { kind: 'load-library' }, { kind: 'open-session', path });

function toStart(state: State): Transition {
  return transition(
    { ...state, screen: { kind: 'start', form: emptyForm(state.settings) } },
    { kind: 'load-library' },
  );
}

export function updateSessions(state: State, screen: At<'sessions'>, press: KeyPress): Transition {
  if (press.command === 'go-back')
    return transition({ ...state, screen: { kind: 'home', cursor: 0 } });
  const index = picked(screen.cursor, press, state.sessions.length);
  const session = index === undefined ? undefined : state.sessions[index];
  if (session !== undefined) return pickUp(state, session);
  return transition({
    ...state,
    screen: { ...screen, cursor: moved(screen.cursor, press.command, state.sessions.length) },
  });
}
