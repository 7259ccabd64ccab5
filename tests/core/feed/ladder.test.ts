import { expect, test } from 'vitest';
import { ladderOf } from '../../../src/core/feed/ladder.ts';
import type { Ladder } from '../../../src/core/feed/ladder.ts';
import { locate } from '../../../src/core/feed/located/locate.ts';
import { apart, feedNamed, problemCodes, value } from './build.ts';

const feed = feedNamed('no-supply');
const setting = { on: ['headlamps', 'parking'] };
const readings = [
  { station: 'post-pos', volts: 12.57 },
  { station: 'bulk-e', volts: 12.48 },
  { station: 'bulk-d', volts: 9.97 },
  { station: 'body', volts: 0.03 },
];
const located = locate(feed, setting, readings);
const ladder: Ladder = value(
  ladderOf(feed, setting, { load: 'headlamp-left', readings, located, next: ['am-b'] }),
);

test('the stations stand in the order of the current, the load between', () => {
  expect(ladder.supply.map(({ station }) => station)).toEqual([
    'post-pos',
    'clamp-pos',
    'stud',
    'link-in',
    'link-out',
    'bulk-e',
    'bulk-d',
    'am-b',
    'am-a',
    'splice',
    'lsw-b',
    'lsw-out',
    'dip-in',
    'dip-out',
    'lamp-tee',
    'lamp-l-feed',
    'lamp-l-pin',
  ]);
  expect(ladder.load.name).toBe('left headlamp, low');
  expect(ladder.ground.map(({ station }) => station)).toEqual([
    'lamp-l-return',
    'body',
    'block',
    'clamp-neg',
    'post-neg',
  ]);
});

const rung = (station: string) =>
  [...ladder.supply, ...ladder.ground].find((one) => one.station === station)!;

test('a rung has what was found, what is sound and the stretch that leads to it', () => {
  const { found, sound, span } = rung('bulk-d');

  expect(found).toBe(9.97);
  expect(apart(sound, 12.41)).toBeLessThan(0.02);
  expect([span?.id, span?.name, span?.stretch?.verdict]).toEqual([
    'bulk-e:bulk-d',
    'bulkhead feed cavity',
    'bad',
  ]);
});

test('spans beyond the last reading belong to no stretch yet', () => {
  expect(rung('am-a').span?.stretch).toBeUndefined();
  expect(rung('block').span?.stretch?.verdict).toBe('sound');
});

test('read, next and unread stations are marked, branches hang where they leave', () => {
  expect(['bulk-e', 'am-b', 'am-a'].map((station) => rung(station).mark)).toEqual([
    'read',
    'next',
    'unread',
  ]);
  expect(rung('splice').branches).toEqual(['ign-b', 'fuse-b', 'bulk2-d']);
});

test('two readings that cannot both be right are both marked', () => {
  const odd = [...readings, { station: 'am-b', volts: 12.3 }];
  const wish = { load: 'headlamp-left', readings: odd, located: locate(feed, setting, odd) };

  const marks = value(ladderOf(feed, setting, wish)).supply.filter(({ mark }) => mark === 'wrong');

  expect(marks.map(({ station }) => station)).toEqual(['bulk-d', 'am-b']);
});

test('a load that is not there is told', () => {
  expect(problemCodes(ladderOf(feed, setting, { load: 'lift', readings, located }))).toEqual([
    'feed-unknown',
  ]);
});
