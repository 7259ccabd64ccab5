import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Stamp } from '../../../src/core/session/kinds/shapes.ts';
import {
  clockOddities,
  stretchBetween,
  stretchOver,
  workedSeconds,
} from '../../../src/core/session/time.ts';

const at = (wall: string, mono: number, up: number, run = 'run-1'): Stamp => ({
  at: wall,
  run,
  mono: mono * 1000,
  up,
});
const start = at('2026-04-11T10:00:00.000+02:00', 0, 5000);

const tenMinutesLater = at('2026-04-11T10:10:00.000+02:00', 600, 5600);
const numbered = (...stamps: readonly Stamp[]) =>
  stamps.map((stamp, index) => ({ ...stamp, n: index + 1 }));

describe('time between two events', () => {
  test('is worked time when nothing odd happens', () => {
    expect(workedSeconds(start, tenMinutesLater)).toBe(600);
    expect(clockOddities(numbered(start, tenMinutesLater))).toEqual([]);
  });

  test.each([
    [
      'an hour asleep is told and not counted',
      at('2026-04-11T11:10:00.000+02:00', 600, 9200),
      600,
      [{ kind: 'slept', after: 1, seconds: 3600 }],
    ],
    [
      'a clock put on an hour changes no duration',
      at('2026-04-11T11:10:00.000+02:00', 600, 5600),
      600,
      [{ kind: 'clock-changed', after: 1, seconds: 3600 }],
    ],
    [
      'a clock put back an hour changes no duration',
      at('2026-04-11T09:10:00.000+02:00', 600, 5600),
      600,
      [{ kind: 'clock-changed', after: 1, seconds: -3600 }],
    ],
    [
      'a clock put back while asleep is told with the sleep',
      at('2026-04-11T10:10:00.000+02:00', 600, 9200),
      600,
      [
        { kind: 'slept', after: 1, seconds: 3600 },
        { kind: 'clock-changed', after: 1, seconds: -3600 },
      ],
    ],
    [
      'two seconds of difference are noise',
      at('2026-04-11T10:10:02.000+02:00', 598, 5600),
      600,
      [],
    ],
    [
      'a new zone alone is no change of the clock',
      at('2026-04-11T09:10:00.000+01:00', 600, 5600),
      600,
      [{ kind: 'zone-changed', after: 1 }],
    ],
    [
      'between two openings of the file nothing counts',
      at('2026-04-11T10:10:00.000+02:00', 600, 5600, 'run-2'),
      0,
      [],
    ],
    [
      'a new zone between two openings is told',
      at('2026-04-11T09:10:00.000+01:00', 600, 5600, 'run-2'),
      0,
      [{ kind: 'zone-changed', after: 1 }],
    ],
    [
      'a new run after a reboot counts nothing',
      at('2026-04-11T12:00:00.000+02:00', 0, 40, 'run-2'),
      0,
      [],
    ],
  ] as const)('%s', (_, later, worked, oddities) => {
    expect(workedSeconds(start, later)).toBe(worked);
    expect(clockOddities(numbered(start, later))).toEqual(oddities);
  });

  // Central European clocks of 2026 go on at 02:00 on 29 March and back at 03:00 on 25 October
  // (last Sundays, Directive 2000/84/EC; from memory).
  test.each([
    ['on', '2026-03-29T01:50:00.000+01:00', '2026-03-29T03:10:00.000+02:00'],
    ['back', '2026-10-25T02:50:00.000+02:00', '2026-10-25T02:10:00.000+01:00'],
  ])('summer time that goes %s leaves twenty minutes twenty minutes', (_, before, after) => {
    const [one, other] = [at(before, 0, 100), at(after, 1200, 1300)];

    expect(workedSeconds(one, other)).toBe(1200);
    expect(clockOddities(numbered(one, other))).toEqual([{ kind: 'zone-changed', after: 1 }]);
  });

  test('minutes worked add up over sleep and a second opening', () => {
    const events = [
      start,
      tenMinutesLater,
      at('2026-04-11T12:10:00.000+02:00', 660, 12_860),
      at('2026-04-12T08:00:00.000+02:00', 0, 30, 'run-2'),
      at('2026-04-12T08:05:00.000+02:00', 300, 330, 'run-2'),
    ];

    // 10 min, 1 min beside two hours asleep, nothing between the days, 5 min.
    expect(stretchOver(events).worked / 60).toBeCloseTo(16, 10);
  });

  test('no list of events has no minutes', () => {
    expect(stretchOver([]).worked).toBe(0);
    expect(stretchOver([start]).worked).toBe(0);
  });

  test('whatever the clocks say, worked time is never negative nor more than uptime', () => {
    const clock = fc.double({ min: -1e7, max: 1e7, noNaN: true });

    fc.assert(
      fc.property(clock, clock, clock, clock, (mono, up, laterMono, laterUp) => {
        const worked = workedSeconds(
          at(start.at, mono, up),
          at(tenMinutesLater.at, laterMono, laterUp),
        );
        expect(worked).toBeGreaterThanOrEqual(0);
        expect(worked).toBeLessThanOrEqual(Math.max(0, laterUp - up));
      }),
      { seed: 53, numRuns: 2000 },
    );
  });

  test('a time that is no time is no odd clock', () => {
    expect(clockOddities(numbered(start, { ...tenMinutesLater, at: 'noon+02:00' }))).toEqual([]);
  });
});

describe('where the time went', () => {
  const night = at('2026-04-12T07:00:00.000+02:00', 75_600, 80_600);

  test('a night with the file left open is a gap, not work', () => {
    expect(stretchBetween(start, night)).toEqual({ worked: 0, away: 0, gap: 75_600 });
  });

  test('a night with the machine asleep, or the job put down, was away', () => {
    const slept = at('2026-04-12T07:00:00.000+02:00', 60, 80_600);
    const next = at('2026-04-12T07:00:00.000+02:00', 0, 30, 'run-2');

    expect(stretchBetween(start, slept)).toEqual({ worked: 60, away: 75_540, gap: 0 });
    expect(stretchBetween({ ...start, kind: 'paused' }, next)).toMatchObject({ away: 75_600 });
    expect(stretchBetween({ ...start, kind: 'found' }, next)).toMatchObject({ gap: 75_600 });
  });

  test('four hours on one repair are work', () => {
    const done = at('2026-04-11T14:00:00.000+02:00', 14_400, 19_400);

    expect(stretchBetween(start, done)).toEqual({ worked: 14_400, away: 0, gap: 0 });
  });

  // The end of daylight saving: 02:59+02:00 is followed by 02:00+01:00 (ISO 8601 local time with
  // its offset; the offset alone says which moment it is).
  const step = fc.record({
    seconds: fc.integer({ min: 0, max: 40_000 }),
    slept: fc.boolean(),
    opened: fc.boolean(),
    put: fc.boolean(),
    zone: fc.constantFrom('+02:00', '+01:00', '-07:00', 'Z'),
  });

  test('its parts sum to the span to the second, through sleep, zones and openings', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        let [moment, mono, up, run] = [Date.UTC(2026, 9, 24, 22), 0, 100, 1];
        const events = [{ ...walled(moment, '+02:00'), run: 'run-1', mono, up, kind: 'found' }];
        for (const { seconds, slept, opened, put, zone } of steps) {
          moment += seconds * 1000;
          up += seconds;
          if (opened) [run, mono] = [run + 1, 0];
          else if (!slept) mono += seconds * 1000;
          const kind = put ? 'paused' : 'found';
          events.push({ ...walled(moment, zone), run: `run-${run}`, mono, up, kind });
        }
        const { worked, away, gap } = stretchOver(events);
        const span = steps.reduce((sum, { seconds }) => sum + seconds, 0);

        expect(worked + away + gap).toBeCloseTo(span, 6);
      }),
    );
  });

  test('a clock set back between two openings makes no time negative', () => {
    const earlier = at('2026-04-11T09:00:00.000+02:00', 0, 10, 'run-2');

    expect(stretchBetween(start, earlier)).toEqual({ worked: 0, away: 0, gap: 0 });
  });
});

/** A moment as the wall shows it in a zone of that offset. */
function walled(moment: number, zone: string): { readonly at: string } {
  const [, sign = '+', hours = '0'] = /^([+-])(\d\d)/.exec(zone) ?? [];
  const shift = (sign === '-' ? -1 : 1) * Number(hours) * 3_600_000;
  return { at: new Date(moment + shift).toISOString().replace('Z', zone) };
}
