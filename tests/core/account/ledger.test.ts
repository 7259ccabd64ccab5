import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ledgerOf, ledgerWords } from '../../../src/core/account/blocks/ledger.ts';
import type { Payload } from '../../../src/core/session/event.ts';
import { fold } from '../../../src/core/session/fold.ts';
import type { Stamp } from '../../../src/core/session/kinds/shapes.ts';
import { newEvent } from '../../../src/core/session/read-event.ts';
import { sum } from '../../../src/core/sum.ts';
import { headerFor } from '../../helpers/story.ts';

/** What the world does between two events, and what is then recorded. */
type Happening = {
  /** Seconds that truly pass, and how many of them the machine sleeps. */
  readonly awake: number;
  readonly asleep: number;
  /** The writer dies, or puts the job down, and it is taken up in another run of the same or another boot. */
  readonly restart: boolean;
  /** Seconds by which somebody sets the clock, while the file is open. */
  readonly clockSet: number;
  /** Minutes from UTC that the wall clock shows from here on: a journey, or the end of daylight saving. */
  readonly zone: number;
  readonly said: Payload;
};

const payloads: readonly Payload[] = [
  { kind: 'check-begun', check: 'look', acknowledged: [] },
  { kind: 'found', check: 'look', result: 'whole' },
  { kind: 'found', check: 'lamp', result: 'dark' },
  { kind: 'timer', label: 'soak', minutes: 15 },
  { kind: 'timer-off', of: 2 },
  { kind: 'noted', text: 'green dust' },
  { kind: 'access', access: 'dash', now: 'open' },
  { kind: 'standing', set: { heat: 'cold' }, implied: true },
  { kind: 'standing', set: { heat: 'cold' } },
  { kind: 'repaired', cause: 'fuse', parts: [], acknowledged: [] },
  { kind: 'proved', check: 'lamp', result: 'dark', good: false },
  { kind: 'corrected', of: 3 },
  { kind: 'paused' },
  { kind: 'part-bought', part: 'bulb', use: 'spare' },
];

const happening: fc.Arbitrary<Happening> = fc.record({
  awake: fc.integer({ min: 0, max: 30_000 }),
  asleep: fc.oneof(fc.constant(0), fc.integer({ min: 3, max: 50_000 })),
  restart: fc.boolean(),
  clockSet: fc.oneof(fc.constant(0), fc.integer({ min: -90_000, max: 90_000 })),
  zone: fc.constantFrom(60, 120, -300, 345),
  said: fc.constantFrom(...payloads),
});

const two = (value: number): string => String(Math.trunc(Math.abs(value))).padStart(2, '0');

/** The wall time that a clock shows, `ahead` seconds off the true one. */
function wall(seconds: number, zone: number): string {
  const shown = new Date(Date.UTC(2026, 9, 24) + (seconds + zone * 60) * 1000).toISOString();
  return `${shown.slice(0, -1)}${zone < 0 ? '-' : '+'}${two(zone / 60)}:${two(zone % 60)}`;
}

/** The events that a job leaves behind, and the seconds that truly passed over it. */
function recorded(happenings: readonly Happening[]) {
  let [passed, slept, off, run] = [0, 0, 0, 0];
  let [bootedAt, begunAt, sleptAtBegin] = [-5000, 0, 0];
  const events = happenings.map(({ awake, asleep, restart, clockSet, zone, said }, index) => {
    if (index > 0) passed += awake + asleep;
    if (index > 0) slept += asleep;
    if (restart && index > 0) {
      run += 1;
      [bootedAt, begunAt, sleptAtBegin] = [passed - 20, passed, slept];
    } else off += clockSet;
    const stamp: Stamp = {
      at: wall(passed + off, zone),
      run: `run-${run}`,
      mono: (passed - begunAt - (slept - sleptAtBegin)) * 1000,
      up: passed - bootedAt,
    };
    return newEvent(index + 1, stamp, said);
  });
  return { events, passed };
}

test('its parts are all the time there was, to the second, whatever the clocks did', () => {
  fc.assert(
    fc.property(fc.array(happening, { minLength: 1, maxLength: 25 }), (happenings) => {
      const { events, passed } = recorded(happenings);

      const ledger = ledgerOf(fold(headerFor(), events));

      expect(Math.abs(sum(Object.values(ledger)) * 60 - passed)).toBeLessThan(0.01);
      expect(Math.min(...Object.values(ledger))).toBeGreaterThanOrEqual(-1e-9);
    }),
    { seed: 25, numRuns: 300 },
  );
});

const at = (seconds: number, zone: number, run: string, up: number): Stamp => ({
  at: wall(seconds, zone),
  run,
  mono: up * 1000,
  up,
});

test('the hour that daylight saving gives back is no work, and a forgotten night is a gap', () => {
  // 24 October 2026, 22:00 UTC: midnight at +02:00. The clocks go back at 01:00 UTC, to +01:00.
  const [evening, later] = [22 * 3600, 24 * 3600 + 6 * 3600];
  const story = fold(headerFor(), [
    newEvent(1, at(evening, 120, 'one', 0), { kind: 'noted', text: 'begun' }),
    newEvent(2, at(evening + 1800, 120, 'one', 1800), { kind: 'noted', text: 'tired' }),
    newEvent(3, at(later, 60, 'two', 0), { kind: 'resumed' }),
    newEvent(4, at(later + 600, 60, 'two', 600), { kind: 'noted', text: 'on' }),
  ]);

  expect(ledgerOf(story)).toMatchObject({ checking: 40, gap: 450, away: 0 });
  expect(ledgerWords(story)).toBe(
    '40 minutes checking, 7 h 30 min of which the record says nothing',
  );
});

test('what passes on a timer is waiting until something is recorded, and no longer than it runs', () => {
  const story = fold(headerFor(), [
    newEvent(1, at(0, 0, 'one', 0), { kind: 'timer', label: 'soak', minutes: 15 }),
    newEvent(2, at(1200, 0, 'one', 1200), { kind: 'found', check: 'lamp', result: 'dark' }),
    newEvent(3, at(1200, 0, 'one', 1200), { kind: 'timer', label: 'soak', minutes: 60 }),
    newEvent(4, at(1500, 0, 'one', 1500), { kind: 'found', check: 'look', result: 'whole' }),
    newEvent(5, at(1800, 0, 'one', 1800), { kind: 'found', check: 'volts', result: 'full' }),
  ]);

  expect(ledgerOf(story)).toMatchObject({ waiting: 20, checking: 10 });
});
