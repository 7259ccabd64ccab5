import { expect, test } from 'vitest';
import { checkFeed, checkFeedUse } from '../../../src/core/feed/check-feed.ts';
import { Feed } from '../../../src/core/tree/feed-model.ts';
import { check, feedNamed } from './build.ts';
import type { FeedName } from './build.ts';

test.each<{ name: FeedName }>([
  { name: 'no-supply' },
  { name: 'crank' },
  { name: 'charging' },
  { name: 'headlamp' },
])('the $name feed has nothing wrong with it', ({ name }) => {
  expect(checkFeed(feedNamed(name))).toEqual([]);
});

const small = {
  battery: { positive: 'plus', negative: 'minus', volts: 12.6, milliohm: 9 },
  stations: {
    plus: { name: 'plus', side: 'supply', minutes: 0 },
    minus: { name: 'minus', side: 'ground', minutes: 0 },
    lamp: { name: 'lamp', side: 'supply', minutes: 1 },
  },
  spans: [{ from: 'plus', to: 'lamp', name: 'wire', wire: { gauge: 14, metres: 2 } }],
  loads: [{ id: 'lamp', name: 'lamp', from: 'lamp', to: 'minus', takes: { watts: 21, at: 12.8 } }],
};

const found = (changes: object) =>
  checkFeed(Feed.parse({ ...small, ...changes })).map(({ code, path, value }) => [
    code,
    path,
    value,
  ]);

test('a station that is named but not there is told with its place', () => {
  const spans = [...small.spans, { ...small.spans[0], to: 'dash' }];

  expect(found({ spans })).toEqual([['feed-unknown', 'feed.spans[1].to', 'dash']]);
});

test('a field, or something on with the complaint, that is not there is told with its place', () => {
  const machine = { id: 'generator', name: 'generator', from: 'lamp', to: 'minus' };
  const machines = [{ ...machine, volts: 14, milliohm: 10, amps: 20, field: 'winding' }];

  expect(found({ machines, on: ['lamp', 'radio'] })).toEqual([
    ['feed-unknown', 'feed.machines[0].field', 'winding'],
    ['feed-unknown', 'feed.on[1]', 'radio'],
  ]);
});

test('a lamp told in ohms alone is told, since a filament has them at one voltage only', () => {
  const loads = [{ ...small.loads[0], takes: { ohms: 7 }, filament: true }];

  expect(found({ loads })).toEqual([['feed-lamp-volts', 'feed.loads[0].takes', 'lamp']]);
});

test('two spans between one pair of stations, either way round, are told', () => {
  const spans = [...small.spans, { ...small.spans[0], from: 'lamp', to: 'plus' }];

  expect(found({ spans })).toEqual([['feed-twice', 'feed.spans', 'lamp – plus']]);
});

test('two loads of one name are told', () => {
  expect(found({ loads: [...small.loads, ...small.loads] })).toEqual([
    ['feed-twice', 'feed.loads', 'lamp'],
  ]);
});

test('a span without wire or joint is told', () => {
  expect(found({ spans: [{ from: 'plus', to: 'lamp', name: 'nothing' }] })).toEqual([
    ['feed-no-ohms', 'feed.spans[0]', 'plus:lamp'],
  ]);
});

test('a station that nothing joins to the battery is told', () => {
  const stations = { ...small.stations, attic: { name: 'attic', side: 'supply', minutes: 9 } };

  expect(found({ stations })).toEqual([['feed-stranded', 'feed.stations.attic', 'attic']]);
});

test('a check and its causes may only name what the feed has', () => {
  const use = check({ station: 'attic', against: 'cellar', load: ['lamp', 'lift'] });
  const causes = {
    'bad-wire': { span: ['lamp', 'plus'], fault: 'open' },
    'bad-lift': { span: ['plus', 'lift'], fault: 'open' },
    'slow-lift': { fault: { load: 'lift', ohms: 3, sigma: 0 } },
  } as const;

  const values = checkFeedUse(Feed.parse(small), use, causes).map(({ value }) => value);

  expect(values).toEqual(['attic', 'cellar', 'lift', 'plus – lift', 'lift']);
});
