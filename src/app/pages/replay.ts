import { doing, still, type Step } from '../effect.ts';
import type { Press } from '../keys/press.ts';
import type { Speed } from '../walk/recording.ts';
import { liveAt, pace, turningFrom } from './replay-frames.ts';
import { home, type Screen } from '../screen.ts';
import type { State } from '../state.ts';

type At = Extract<Screen, { kind: 'replay' }>;

const speeds: readonly Speed[] = [1, 2, 4];

export function updateReplay(state: State, screen: At, press: Press): Step<State> {
  const { replay } = screen;
  switch (press.command) {
    case 'go-back':
      return still({ ...state, screen: home, live: undefined });
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
      return still(state);
  }
}

const nextSpeed = (speed: Speed): Speed => speeds[(speeds.indexOf(speed) + 1) % speeds.length] ?? 1;

/** Shows the session after so many events; playing stops when somebody steps. */
function show(state: State, screen: At, wanted: number, playing = false): Step<State> {
  const at = Math.max(0, Math.min(screen.replay.events.length, wanted));
  const next: At = { ...screen, at, playing: playing && at < screen.replay.events.length };
  return play({ ...state, live: liveAt(screen.replay, at) }, next);
}

/** Waits for the next event while it plays. */
const play = (state: State, screen: At): Step<State> =>
  screen.playing
    ? doing({ ...state, screen }, { kind: 'play-on', at: screen.at, after: pace(screen.speed) })
    : still({ ...state, screen });

/** One event on, if it still plays and nobody has moved meanwhile. */
export function playedOn(state: State, at: number): Step<State> {
  const { screen } = state;
  return screen.kind === 'replay' && screen.playing && screen.at === at
    ? show(state, screen, at + 1, true)
    : still(state);
}
