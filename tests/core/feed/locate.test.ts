import * as z from 'zod';
import { expect, test } from 'vitest';
import { locate } from '../../../src/core/feed/located/locate.ts';
import type { FeedReading, Located } from '../../../src/core/feed/located/locate.ts';
import type { Stretch } from '../../../src/core/feed/located/stretch.ts';
import type { Change } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { apart, feedNamed, readFixture } from './build.ts';
import type { FeedName } from './build.ts';

const lamps = ['headlamps', 'parking', 'key-run'];

/** The worked readings are of lamps that keep the ohms they burn at. */
const located = (
  feed: FeedName,
  on: readonly string[],
  volts: Readonly<Record<string, number>>,
): Told => told(locate(feedNamed(feed), { on, filaments: 'hot' }, readingsOf(volts)));

type Told = Located & { readonly bad: Stretch | undefined; readonly suspects: readonly string[] };

/** The worst fault by itself. */
const told = (found: Located): Told => ({
  ...found,
  bad: found.faults[0]?.stretch,
  suspects: found.faults[0]?.suspects ?? [],
});

const readingsOf = (volts: Readonly<Record<string, number>>): readonly FeedReading[] =>
  Object.entries(volts).map(([station, shown]) => ({ station, volts: shown }));

const Rows = z.array(
  z.object({
    table: z.string(),
    feed: z.enum(['no-supply', 'crank', 'charging']),
    on: z.array(z.string()),
    rows: z.array(
      z.object({
        state: z.string(),
        filaments: z.enum(['hot', 'cold']),
        changes: z.array(
          z.object({ kind: z.string(), part: z.string().optional(), ohms: z.number().optional() }),
        ),
        volts: z.record(z.string(), z.number()),
        off: z.unknown().optional(),
      }),
    ),
  }),
);

/** The worked readings, 0.01 V each, of every fault whose span has a station read at both sides. */
const faults = Rows.parse(readFixture('worked-volts.json')).flatMap(({ rows, ...table }) =>
  rows.flatMap((row) => {
    const [span] = row.changes.flatMap(({ part }) => (part === undefined ? [] : [part]));
    const part = span?.split(':').every((end) => end in row.volts) ? span : undefined;
    return part === undefined ? [] : [{ ...table, ...row, part }];
  }),
);

test('thirteen worked faults lie between two read stations', () => {
  expect(faults).toHaveLength(13);
});

test.each(faults)('$table, $state: the readings name the span', (fault) => {
  const { feed, on, filaments, volts, part } = fault;
  const found = locate(feedNamed(feed), { on, filaments }, readingsOf(volts));

  expect(found.faults.map(({ suspects }) => suspects)).toEqual([[part]]);
});

test('a burnt bulkhead cavity is told with its drop, ohms and heat', () => {
  // Worked readings for 300 milliohm there: 12.48 and 9.97 V at 8.4 A.
  const { bad } = located('no-supply', lamps, {
    'post-pos': 12.57,
    'bulk-e': 12.48,
    'bulk-d': 9.97,
  });

  expect(bad?.spans).toEqual(['bulk-e:bulk-d']);
  expect(apart(bad?.drop, 2.51)).toBeLessThan(1e-9);
  expect(apart(bad?.amps, 8.4)).toBeLessThan(0.1);
  expect(apart(bad?.ohms, 0.3)).toBeLessThan(0.003);
  expect(apart(bad?.soundOhms, 0.003)).toBeLessThan(1e-9);
  // 2.51 V of which 3 milliohm may take 0.025 V, times 8.4 A.
  expect(apart(bad?.watts, (2.51 - 0.025) * 8.4)).toBeLessThan(0.3);
});

test('between two readings far apart all that lies between is suspect', () => {
  const { suspects } = located('no-supply', lamps, {
    'post-pos': 12.57,
    'bulk-e': 12.48,
    'am-b': 9.94,
  });

  expect(suspects).toEqual(['bulk-e:bulk-d', 'bulk-d:am-b']);
});

test('a dead station behind a live one is open: ohms without end, no heat', () => {
  const { bad } = located('no-supply', lamps, {
    'post-pos': 12.65,
    'link-in': 12.65,
    'link-out': 0,
  });

  expect(bad?.spans).toEqual(['link-in:link-out']);
  expect(bad?.ohms).toBe(Infinity);
  expect(bad?.watts).toBe(0);
});

test('a healthy vehicle has no bad stretch', () => {
  const { stretches, bad, wrong, battery } = located('no-supply', lamps, {
    'post-pos': 12.56,
    'bulk-e': 12.44,
    'am-b': 12.37,
    'lsw-b': 12.26,
    block: 0.01,
    body: 0.03,
  });

  expect(stretches.map(({ verdict }) => verdict)).toEqual(Array.from({ length: 5 }, () => 'sound'));
  expect([bad, wrong, battery?.low]).toEqual([undefined, [], false]);
});

test('a station further on that reads higher means one of the two readings is wrong', () => {
  const { wrong, bad } = located('no-supply', lamps, {
    'post-pos': 12.56,
    'bulk-e': 11.9,
    'am-b': 12.37,
  });

  expect(wrong.map(({ from, to }) => [from, to])).toEqual([['bulk-e', 'am-b']]);
  expect(bad?.to).toBe('bulk-e');
});

test('a higher reading further on within what the meter may be off is no contradiction', () => {
  expect(located('no-supply', lamps, { 'post-pos': 12.5, stud: 12.54 }).wrong).toEqual([]);
});

test('with nothing switched on the readings prove only that nothing is open', () => {
  const { stretches } = located('no-supply', [], { 'post-pos': 12.65, 'lsw-b': 12.65 });

  expect(stretches.map(({ verdict }) => verdict)).toEqual(['idle']);
});

test('a reading taken again replaces the first one', () => {
  const readings = [
    { station: 'post-pos', volts: 12.56 },
    { station: 'bulk-e', volts: 2.4 },
    { station: 'bulk-e', volts: 12.44 },
  ];

  expect(locate(feedNamed('no-supply'), { on: lamps }, readings).faults).toEqual([]);
});

test('a live end of an idle branch stands for the splice where it leaves', () => {
  const { suspects } = located('no-supply', lamps, {
    'post-pos': 12.57,
    'ign-b': 12.36,
    'lsw-b': 10.57,
  });

  expect(suspects).toEqual(['splice:lsw-b']);
});

test('a dead end of an idle branch leaves the branch suspect too', () => {
  const { suspects } = located('no-supply', lamps, {
    'post-pos': 12.65,
    'am-a': 12.35,
    'ign-b': 0,
  });

  expect(suspects).toEqual(['am-a:splice', 'splice:ign-b']);
});

test('while it charges, the current runs backwards through the feed', () => {
  const on = ['headlamps', 'parking', 'key-run', 'ignition', 'blower', 'alternator'];
  // Worked readings, bulkhead feed cavity 60 milliohm.
  const { bad, wrong } = located('charging', on, {
    'post-pos': 13.69,
    'bulk-e': 13.73,
    'bulk-d': 14,
  });

  expect(wrong).toEqual([]);
  expect([bad?.from, bad?.to]).toEqual(['bulk-d', 'bulk-e']);
});

test('low volts at the posts under load are the battery, not the path', () => {
  // Worked readings, battery of 12.4 V behind 1 ohm.
  const { battery, bad } = located('no-supply', lamps, {
    'post-pos': 6.78,
    stud: 6.77,
    'bulk-d': 6.7,
    'lsw-b': 6.62,
  });

  expect(battery?.low).toBe(true);
  expect(bad).toBeUndefined();
});

test.each([
  { one: ['bulk-e:bulk-d', 0.2], other: ['am-b:am-a', 0.15] },
  { one: ['bulk-e:bulk-d', 0.5], other: ['block:body', 0.2] },
  { one: ['clamp-pos:stud', 0.1], other: ['splice:lsw-b', 0.4] },
] as const)('two faults at once, $one and $other, are told as two places', ({ one, other }) => {
  const feed = feedNamed('no-supply');
  const on = ['headlamps', 'parking'];
  const changes = [one, other].map(([part, ohms]): Change => ({ kind: 'ohms', part, ohms }));
  const state = solveFeed(feed, { on }, changes);
  const spans = [one, other].flatMap(([part]) => part.split(':'));
  const volts = ['post-pos', ...spans].map((id) => [id, Number(state.volts(id).toFixed(2))]);

  const { faults } = locate(feed, { on }, readingsOf(Object.fromEntries(volts)));

  expect(faults.map(({ suspects }) => suspects.join(' '))).toEqual(
    expect.arrayContaining([one[0], other[0]]),
  );
  expect(faults).toHaveLength(2);
  for (const [part, ohms] of [one, other]) {
    const fault = faults.find(({ suspects }) => suspects[0] === part);
    expect(apart((fault?.stretch.ohms ?? NaN) / ohms, 1)).toBeLessThan(0.05);
  }
});

test('a drop read across one joint counts, though nothing is read at either end', () => {
  const feed = feedNamed('no-supply');
  const on = ['headlamps', 'parking'];
  const change = { kind: 'ohms', part: 'bulk-e:bulk-d', ohms: 0.5 } as const;
  const state = solveFeed(feed, { on }, [change]);
  const drop = state.volts('bulk-e') - state.volts('bulk-d');
  const across = [{ station: 'bulk-e', against: 'bulk-d', volts: drop }];

  const { faults } = locate(feed, { on }, [], across);
  const home = locate(feed, { on }, [], [{ station: 'body', against: 'clamp-neg', volts: 0.9 }]);
  const clean = locate(feed, { on }, [], [{ station: 'am-b', against: 'am-a', volts: 0.02 }]);

  expect(faults.map(({ suspects }) => suspects)).toEqual([['bulk-e:bulk-d']]);
  // What the lamps take behind it is told from the drop alone.
  expect(apart((faults[0]?.stretch.ohms ?? NaN) / 0.5, 1)).toBeLessThan(0.05);
  expect(home.faults[0]?.suspects).toEqual(['block:body', 'clamp-neg:block']);
  expect(clean.stretches.map(({ verdict }) => verdict)).toEqual(['sound']);
});
