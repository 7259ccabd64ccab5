import { inform, show, type Transition, transition } from '../effect.ts';
import type { KeyPress } from '../keys/command.ts';
import type { Page } from '../page.ts';
import { paceAt, placeTyped, sessionAt, stopFrom, turningFrom } from './replay-frames.ts';
import { home, type At, type Speed } from '../screen.ts';
import type { State } from '../state.ts';

export const replayPage: Page<'replay'> = {
  mode: () => 'replay',
  update: updateReplay,
  bindings: [
    {
      modes: ['replay'],
      keys: ['enter', ' '],
      command: 'choose',
      hint: 'one on',
      about: 'one decision on; after a number or a time: to that place',
    },
    {
      modes: ['replay'],
      keys: ['b', 'back'],
      command: 'up',
      hint: 'one back',
      about: 'one decision back; of what is typed: the last sign away',
    },
    {
      modes: ['replay'],
      keys: ['digit', ':'],
      command: 'type',
      about: 'type the number of an event, or a time of that day (10:42): Enter goes there',
    },
    {
      modes: ['replay'],
      keys: ['t'],
      command: 'to-turning',
      hint: 'next lead',
      about: 'on to where another suspect came to lead',
    },
    {
      modes: ['replay'],
      keys: ['u'],
      command: 'to-turning-back',
      hint: 'lead before',
      about: 'back to where another suspect came to lead',
    },
    {
      modes: ['replay'],
      keys: ['g'],
      command: 'play',
      hint: 'go by itself',
      about: 'go on by itself, or stop',
    },
    {
      modes: ['replay'],
      keys: ['f'],
      command: 'faster',
      hint: 'faster',
      about: 'faster by itself, or slowly again',
    },
    {
      modes: ['replay'],
      keys: ['q', 'esc'],
      command: 'go-back',
      hint: 'leave',
      about: 'Home; of what is typed: forget it',
    },
  ],
};

const speeds: readonly Speed[] = [1, 2, 4];

function updateReplay(state: State, screen: At<'replay'>, press: KeyPress): Transition {
  return screen.typed === '' ? watch(state, screen, press) : typePlace(state, screen, press);
}

function watch(state: State, screen: At<'replay'>, press: KeyPress): Transition {
  const { recording } = screen;
  switch (press.command) {
    case 'go-back':
      return show({ ...state, session: undefined }, home);
    case 'choose':
    case 'down':
      return stepTo(state, screen, stopFrom(recording, screen.at, 'on'));
    case 'up':
      return stepTo(state, screen, stopFrom(recording, screen.at, 'back'));
    case 'to-turning':
      return stepTo(state, screen, turningFrom(recording, screen.at, 'on'));
    case 'to-turning-back':
      return stepTo(state, screen, turningFrom(recording, screen.at, 'back'));
    case 'play':
      return play(state, { ...screen, playing: !screen.playing });
    case 'faster':
      return play(state, { ...screen, speed: nextSpeed(screen.speed) });
    case 'type':
      return show(state, { ...screen, playing: false, typed: press.token });
    default:
      return transition(state);
  }
}

/** A place that is being typed: Enter goes there, and anything else leaves the replay where it was. */
function typePlace(state: State, screen: At<'replay'>, press: KeyPress): Transition {
  const { typed, recording } = screen;
  switch (press.command) {
    case 'type':
      return show(state, { ...screen, typed: `${typed}${press.token}`.slice(0, longestPlace) });
    case 'up':
      return show(state, { ...screen, typed: typed.slice(0, -1) });
    case 'choose': {
      const place = placeTyped(recording, screen.at, typed);
      const there = { ...screen, typed: '' };
      return place === undefined
        ? inform({ ...state, screen: there }, `"${typed}" is no event and no time: 12, or 10:42.`)
        : stepTo(state, there, place);
    }
    default:
      return show(state, { ...screen, typed: '' });
  }
}

/** Signs of the longest place there is: a time, or the number of an event. */
const longestPlace = 6;

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

/** Waits for the next decision while it plays. */
const play = (state: State, screen: At<'replay'>): Transition =>
  screen.playing
    ? show(state, screen, {
        kind: 'play-on',
        at: screen.at,
        after: 1000 * paceAt(screen.recording, screen.at, screen.speed),
      })
    : show(state, screen);

/** One decision on, if it still plays and nobody has moved meanwhile. */
export function playedOn(state: State, at: number): Transition {
  const { screen } = state;
  return screen.kind === 'replay' && screen.playing && screen.at === at
    ? stepTo(state, screen, stopFrom(screen.recording, at, 'on'), true)
    : transition(state);
}
