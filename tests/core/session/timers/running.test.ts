import { expect, test } from 'vitest';
import { fold } from '../../../../src/core/session/fold.ts';
import type { Stamp } from '../../../../src/core/session/kinds/shapes.ts';
import { newEvent } from '../../../../src/core/session/read-event.ts';
import { timersAt, timerWords } from '../../../../src/core/session/timers/running.ts';
import { after, headerFor, verdict } from '../../../helpers/story.ts';

/** A moment of a run: minutes of uptime, how many of them the machine slept, and what the wall shows. */
const moment = (run: string, up: number, wall: string, slept = 0): Stamp => ({
  at: `2026-04-11T${wall}:00.000+00:00`,
  run,
  mono: (up - slept) * 60_000,
  up: up * 60,
});

const begun = (minutes: number, at: Stamp) =>
  fold(headerFor(), [newEvent(1, at, { kind: 'timer', label: 'soak', minutes })]);

const words = (minutes: number, at: Stamp, now: Stamp) =>
  timersAt(begun(minutes, at), now).map(timerWords);

const start = moment('one', 100, '10:00');

test.each([
  ['as time goes on', moment('one', 108, '10:08'), ['soak 7 min left']],
  ['to the last minute', moment('one', 114.5, '10:14'), ['soak under 1 min left']],
  ['when it has just run out', moment('one', 115, '10:15'), ['soak: done now']],
  ['until it is put away', moment('one', 118, '10:18'), ['soak: done 3 min ago']],
  [
    'through sleep: the vehicle soaks on',
    moment('one', 130, '10:30', 25),
    ['soak: done 15 min ago'],
  ],
  ['through a clock set back', moment('one', 110, '09:10'), ['soak 5 min left']],
  ['through a crash and a reboot', moment('two', 1, '10:12'), ['soak 3 min left']],
])('a timer of 15 minutes tells what is left %s', (_, now, line) => {
  expect(words(15, start, now)).toEqual(line);
});

test('hours are told as such', () => {
  expect(words(240, start, moment('one', 130, '10:30'))).toEqual(['soak 3 h 30 min left']);
});

test('the one with the least left comes first; a stopped one is gone, and comes back by undo', () => {
  const set = [
    { do: 'timer', label: 'cool', minutes: 30 },
    { do: 'timer', label: 'charge', minutes: 10 },
  ] as const;
  const now = { ...moment('run-1', 0, '10:03'), mono: 180_000, up: 5180 };
  const labels = (...more: readonly Parameters<typeof after>[0][number][]) =>
    timersAt(after([...set, ...more]).story, now).map(({ label }) => label);

  expect(labels()).toEqual(['charge', 'cool']);
  expect(labels({ do: 'timer-off', n: 1 })).toEqual(['charge']);
  expect(labels({ do: 'timer-off' }, { do: 'take-back' })).toEqual(['charge', 'cool']);
  expect(labels({ do: 'take-back' })).toEqual(['cool']);
  expect(verdict(after(set).story, { do: 'timer-off', n: 7 })).toBe('no-timer');
});

test('a closed job has none', () => {
  const { story } = after([
    { do: 'timer', label: 'cool', minutes: 30 },
    { do: 'close', as: 'given-up' },
  ]);

  expect(timersAt(story, start)).toEqual([]);
});
