import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { locate } from '../../../src/core/feed/located/locate.ts';
import type { FeedReading } from '../../../src/core/feed/located/locate.ts';
import { nextProbe } from '../../../src/core/feed/probe.ts';
import type { NextProbe, ProbeWish } from '../../../src/core/feed/probe.ts';
import { feedNamed, problemCodes, value } from './build.ts';
import { loopSpans, searched } from './search.ts';

const feed = feedNamed('no-supply');
const setting = { on: ['headlamps', 'parking', 'key-run'] };
const load = 'headlamp-left';

function next(readings: readonly FeedReading[], wish: Partial<ProbeWish> = {}): NextProbe {
  const located = locate(feed, setting, readings);
  return value(nextProbe(feed, setting, located, { load, ...wish }));
}

const post = { station: 'post-pos', volts: 12.56 };

test('the positive post comes first', () => {
  expect(next([])).toMatchObject({ kind: 'probe', station: 'post-pos' });
});

test('with equal minutes the probe goes to the middle of what is suspect', () => {
  const suspects = ['link-in:link-out', 'link-out:bulk-e', 'bulk-e:bulk-d', 'bulk-d:am-b'];
  const weights = Object.fromEntries(
    loopSpans(feed, setting, load).map((span) => [span, suspects.includes(span) ? 1 : 0]),
  );

  expect(next([post], { weights, minutes: () => 1 })).toEqual({
    kind: 'probe',
    station: 'bulk-e',
    minutes: 1,
    before: 0.5,
    // Two readings settle any of four spans.
    expected: 2,
    suspects,
  });
});

test('a station that is hard to reach is left for later', () => {
  const weights = Object.fromEntries(
    loopSpans(feed, setting, load).map((span) => [span, span.includes('bulk-') ? 1 : 0]),
  );
  const minutes = (station: string) => (station === 'bulk-e' ? 1 : 20);

  // Two of three spans lie beyond, but it costs a minute and the others twenty.
  expect(next([post], { weights, minutes })).toMatchObject({ station: 'bulk-e', before: 1 / 3 });
  expect(next([post], { weights, minutes: (id) => 21 - minutes(id) })).toMatchObject({
    station: 'bulk-d',
  });
});

test('a likelier span pulls the probe towards it', () => {
  const weights = Object.fromEntries(loopSpans(feed, setting, load).map((span) => [span, 0.01]));
  weights['bulk-e:bulk-d'] = 5;

  expect(next([post], { weights, minutes: () => 1 })).toMatchObject({ station: 'bulk-d' });
});

test('the splice is read at the end of an idle branch, not bared', () => {
  const readings = [post, { station: 'am-a', volts: 12.35 }, { station: 'lsw-b', volts: 0 }];
  const wish = { minutes: (station: string) => (station === 'fuse-b' ? 1 : 30) };

  expect(next(readings, wish)).toMatchObject({ kind: 'probe', station: 'fuse-b' });
});

test('one span left is the place', () => {
  const readings = [post, { station: 'bulk-e', volts: 12.48 }, { station: 'bulk-d', volts: 2.4 }];

  expect(next(readings)).toEqual({ kind: 'found', spans: ['bulk-e:bulk-d'] });
});

test('a loop with every span sound is clear: it is the lamp itself', () => {
  const readings = [
    post,
    { station: 'lsw-b', volts: 12.26 },
    { station: 'lamp-l-pin', volts: 11.93 },
    { station: 'lamp-l-return', volts: 0.08 },
  ];

  expect(next(readings)).toEqual({ kind: 'clear' });
});

test('of two faults the wide one is searched, and both are told once each is at one span', () => {
  const wide = [post, { station: 'bulk-e', volts: 12.48 }, { station: 'bulk-d', volts: 9 }];
  const far = { station: 'lsw-b', volts: 7 };
  const ends = [
    { station: 'am-b', volts: 8.97 },
    { station: 'am-a', volts: 7.1 },
  ];

  expect(next([...wide, far])).toMatchObject({
    kind: 'probe',
    suspects: ['bulk-d:am-b', 'am-b:am-a', 'am-a:splice', 'splice:lsw-b'],
  });
  expect(next([...wide, far, ...ends])).toEqual({
    kind: 'found',
    spans: ['bulk-e:bulk-d', 'am-b:am-a'],
  });
});

test('a load that is not there is told', () => {
  const located = locate(feed, setting, []);

  expect(problemCodes(nextProbe(feed, setting, located, { load: 'lift' }))).toEqual([
    'feed-unknown',
  ]);
});

test.each([
  { what: 'open', ohms: Infinity },
  { what: 'of 5 ohm', ohms: 5 },
  { what: 'of 150 milliohm', ohms: 0.15 },
])('following the advice finds a span $what wherever it is in the loop', ({ ohms }) => {
  const spans = loopSpans(feed, setting, load);

  const found = spans.map((span) => searched({ feed, setting, load }, span, ohms).found);

  expect(found).toEqual(spans);
});

test('whatever the meter is made to say, every stretch has figures and there is a next step', () => {
  const reading = fc.record({
    station: fc.constantFrom(...Object.keys(feed.stations)),
    volts: fc.oneof(fc.constantFrom(0, 12.65), fc.double({ min: -15, max: 20, noNaN: true })),
  });

  fc.assert(
    fc.property(fc.array(reading, { maxLength: 8 }), (readings) => {
      const { stretches } = locate(feed, setting, readings);
      const figures = stretches.flatMap(({ drop, sound, excess, amps, ohms, watts }) => [
        ...[drop, sound, excess, amps, watts].map(Number.isFinite),
        !Number.isNaN(ohms),
      ]);

      expect(figures).not.toContain(false);
      const step = next(readings);
      expect(['probe', 'found', 'clear']).toContain(step.kind);
      const read = readings.map(({ station }) => station);
      expect(step.kind === 'probe' && read.includes(step.station)).toBe(false);
    }),
    { seed: 20260411, numRuns: 200 },
  );
});
