import { show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { sessionAt, pace, turningFrom } from './replay-frames.ts';
import { home, type At, type Speed } from '../screen.ts';
import type { State } from '../state.ts';

export const replayPage: Page<'replay'> = {
  mode: () => 'replay',
  update: updateReplay,
  bindings: [
    {
      modes: ['replay'],
      keys: ['enter', 'right', ' '],
      command: 'choose',
      hint: 'next',
      about: 'one event on',
    },
    { modes: ['replay'], keys: ['left'], command: 'up', hint: 'before', about: 'one event back' },
    { modes: ['replay'], keys: ['p'], command: 'play', hint: 'play', about: 'play, or stop' },
    { modes: ['replay'], keys: ['+'], command: 'faster', hint: 'faster', about: 'turn the speed' },
    {
      modes: ['replay'],
      keys: ['t'],
      command: 'to-turning',
      hint: 'turning point',
      about: 'on to where the leading suspect changed',
    },
    {
      modes: ['replay'],
      keys: ['T'],
      command: 'to-turning-back',
      about: 'back to where the leading suspect changed',
    },
    {
      modes: ['replay'],
      keys: ['q', 'esc', 'b'],
      command: 'go-back',
      hint: 'leave',
      about: 'Home',
    },
  ],
};

const speeds: readonly Speed[] = [1, 2, 4];

function updateReplay(state: State, screen: At<'replay'>, press: KeyPress): Transition {
  const { recording } = screen;
  switch (press.command) {
    case 'go-back':
      return show({ ...state, session: undefined }, home);
    case 'choose':
    case 'down':
      return stepTo(state, screen, screen.at + 1);
    case 'up':
      return stepTo(state, screen, screen.at - 1);
    case 'to-turning':
      return stepTo(state, screen, turningFrom(recording, screen.at, 'on'));
    case 'to-turning-back':
      return stepTo(state, screen, turningFrom(recording, screen.at, 'back'));
    case 'play':
      return play(state, { ...screen, playing: !screen.playing });
    case 'faster':
      return play(state, { ...screen, speed: nextSpeed(screen.speed) });
    default:
      return transition(state);
  }
}

const nextSpeed = (speed: Speed): Speed => speeds[(speeds.indexOf(speed) + 1) % speeds.length] ?? 1;

/** Shows the session after so many events; playing stops when somebody steps. */
function stepTo(state: State, screen: At<'replay'>, wanted: number, playing = false): Transition {
  const at = Math.max(0, Math.min(screen.recording.events.length, wanted));
  const next: At<'replay'> = {
    ...screen,
    at,
    playing: playing && at < screen.recording.events.length,
  };
  return play({ ...state, session: sessionAt(screen.recording, at) }, next);
}

/** Waits for the next event while it plays. */
const play = (state: State, screen: At<'replay'>): Transition =>
  screen.playing
    ? show(state, screen, { kind: 'play-on', at: screen.at, after: pace(screen.speed) })
    : show(state, screen);

/** One event on, if it still plays and nobody has moved meanwhile. */
export function playedOn(state: State, at: number): Transition {
  const { screen } = state;
  return screen.kind === 'replay' && screen.playing && screen.at === at
    ? stepTo(state, screen, at + 1, true)
    : transition(state);
}
