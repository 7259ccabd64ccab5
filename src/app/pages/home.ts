import { show, transition, type Transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import { moved, picked } from '../keys/cursor.ts';
import { searched } from '../keys/search.ts';
import { nothingSought } from '../keys/sought.ts';
import type { Page } from '../page.ts';
import { home, type At } from '../screen.ts';
import type { SessionLine } from '../../core/session/name.ts';
import type { State } from '../state.ts';
import { openFigures } from './figures.ts';
import { homeLines, sessionsShown, type HomeLine } from './home-lines.ts';
import { openJobs } from './reading.ts';
import { openSettings } from './settings.ts';
import { openStart } from './start.ts';
import { openVehicles } from './vehicle.ts';

export const homePage: Page<'home'> = { mode: () => 'home', update: updateHome };

function updateHome(state: State, screen: At<'home'>, press: KeyPress): Transition {
  const lines = homeLines(state.sessions);
  const line = picked(screen.cursor, press, lines);
  if (line !== undefined) return chooseLine(state, line);
  const cursor = moved(screen.cursor, press.command, lines.length);
  return show(state, { kind: 'home', cursor });
}

function chooseLine(state: State, line: HomeLine): Transition {
  switch (line.kind) {
    case 'pick-up':
      return pickUp(state, line.session);
    case 'start':
      return openStart(state);
    case 'list':
      return openSessions(state);
    case 'vehicles':
      return openVehicles(state);
    case 'jobs':
      return openJobs(state);
    case 'figures':
      return openFigures(state);
    case 'settings':
      return openSettings(state);
    case 'quit':
      return transition({ ...state, leaving: true }, { kind: 'leave' });
  }
}

const pickUp = (state: State, { path }: SessionLine): Transition =>
  transition(state, { kind: 'load-library' }, { kind: 'open-session', path });

const openSessions = (state: State): Transition =>
  show(state, { kind: 'sessions', ...nothingSought }, { kind: 'list-sessions' });

export const sessionsPage: Page<'sessions'> = {
  mode: () => 'search',
  update: updateSessions,
  open: openSessions,
};

function updateSessions(state: State, screen: At<'sessions'>, press: KeyPress): Transition {
  if (press.command === 'go-back')
    return screen.sought === '' ? show(state, home) : openSessions(state);
  const lines = sessionsShown(state.sessions, screen);
  const session = picked(screen.cursor, press, lines);
  if (session !== undefined) return pickUp(state, session);
  return show(state, { ...screen, ...searched(screen, press, lines.length) });
}
