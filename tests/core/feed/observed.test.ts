import { expect, test } from 'vitest';
import { locate } from '../../../src/core/feed/located/locate.ts';
import { observedByLoads } from '../../../src/core/feed/located/observed.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { feedNamed } from './build.ts';

test('readings are gathered by what was on, those of the last reading at the end', () => {
  const at = (load: string[], station: string, volts: number) => ({
    feed: { station, load, reads: 'volts' as const },
    volts,
  });

  const groups = observedByLoads(feedNamed('no-supply'), [
    at(['headlamps'], 'stud', 12.5),
    at([], 'post-pos', 12.6),
    at(['headlamps'], 'bulk-e', 12.4),
  ]);

  expect(groups).toEqual([
    { setting: { on: [] }, readings: [{ station: 'post-pos', volts: 12.6 }], drops: [] },
    {
      setting: { on: ['headlamps'] },
      readings: [
        { station: 'stud', volts: 12.5 },
        { station: 'bulk-e', volts: 12.4 },
      ],
      drops: [],
    },
  ]);
});

test('where a charging machine feeds both ways, the higher end is no wrong reading', () => {
  const feed = feedNamed('charging');
  const on = ['key-run', 'rotor', 'alternator'];
  // The regulator's sense wire hangs on the splice that the machine feeds, the battery on the other side.
  const state = solveFeed(feed, { on }, [{ kind: 'ohms', part: 'ign-r:reg-ign', ohms: 2 }]);
  const drop = state.volts('post-pos') - state.volts('reg-ign');
  const { wrong, faults } = locate(
    feed,
    { on },
    [],
    [{ station: 'post-pos', against: 'reg-ign', volts: drop }],
  );

  expect(drop).toBeGreaterThan(1);
  expect(wrong).toEqual([]);
  expect(faults).toHaveLength(1);
});
