import { type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/press.ts';
import type { Speed } from '../walk/recording.ts';
import { sessionAt, pace, turningFrom } from './replay-frames.ts';
import { home, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

type At = Extract<Screen, { kind: 'replay' }>;

const speeds: readonly Speed[] = [1, 2, 4];

export function updateReplay(state: State, screen: At, press: KeyPress): Transition {
  const { replay } = screen;
  switch (press.command) {
    case 'go-back':
      return transition({ ...state, screen: home, session: undefined });
    case 'choose':
    case 'down':
      return show(state, screen, screen.at + 1);
    case 'up':
      return show(state, screen, screen.at - 1);
    case 'to-turning':
      return show(state, screen, turningFrom(replay, screen.at, 'on'));
    case 'to-turning-back':
      return show(state, screen, turningFrom(replay, screen.at, 'back'));
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
function show(state: State, screen: At, wanted: number, playing = false): Transition {
  const at = Math.max(0, Math.min(screen.replay.events.length, wanted));
  const next: At = { ...screen, at, playing: playing && at < screen.replay.events.length };
  return play({ ...state, session: sessionAt(screen.replay, at) }, next);
}

/** Waits for the next event while it plays. */
const play = (state: State, screen: At): Transition =>
  screen.playing
    ? transition(
        { ...state, screen },
        { kind: 'play-on', at: screen.at, after: pace(screen.speed) },
      )
    : transition({ ...state, screen });

/** One event on, if it still plays and nobody has moved meanwhile. */
export function playedOn(state: State, at: number): Transition {
  const { screen } = state;
  return screen.kind === 'replay' && screen.playing && screen.at === at
    ? show(state, screen, at + 1, true)
    : transition(state);
}
