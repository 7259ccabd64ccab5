import { expect, test } from 'vitest';
import { lintStanding } from '../../../../src/core/tree/lint/standing.ts';
import type { Check, Tree } from '../../../../src/core/tree/model.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';
import { smallTree, waitingChecks } from '../../../helpers/tree.ts';

const onPath = (id: string, change: Partial<Check>): Tree => {
  const tree = shippedTree('no-supply');
  const check = tree.checks[id];
  if (check === undefined) throw new Error(`no check ${id}`);
  return { ...tree, checks: { ...tree.checks, [id]: { ...check, ...change } } };
};

test('volts on the path with the battery off are told; those of its own posts are none', () => {
  const off = { standing: { battery: 'disconnected' } } as const;

  expect(toldBy(lintStanding, onPath('link-volts', off))).toEqual([
    'standing-against-reading checks.link-volts.standing.battery',
  ]);
  expect(toldBy(lintStanding, onPath('bat-rest-volts', off))).toEqual([]);
});

test('ohms with the battery on, and a load that the key feeds with the key off, are told', () => {
  const ohms = onPath('link-volts', {
    standing: { battery: 'connected' },
    feed: { station: 'link-out', load: [], reads: 'ohms' },
  });
  const keyed = onPath('link-volts', {
    standing: { battery: 'connected', key: 'off' },
    feed: { station: 'link-out', load: ['key-run'], reads: 'volts' },
  });

  expect(toldBy(lintStanding, ohms)).toEqual([
    'standing-against-reading checks.link-volts.standing.battery',
  ]);
  expect(toldBy(lintStanding, keyed)).toEqual([
    'standing-against-reading checks.link-volts.standing.key',
  ]);
});

test.each<[step: string, standing: Check['standing'], told: boolean]>([
  ['Key on, lamps on.', { key: 'off' }, true],
  ['Key on, lamps on.', { key: 'run' }, false],
  ['Engine running: read it.', { engine: 'off' }, true],
  ['Idling: hand near the pipe.', { engine: 'off' }, true],
  ['Engine off: clip the lamp on, then start.', { engine: 'idling' }, false],
  ['Battery connected.', { battery: 'disconnected' }, true],
])('"%s" with %o', (step, standing, told) => {
  const found = toldBy(lintStanding, withCheck('look', { how: [step], standing }));

  expect(found).toEqual(told ? ['standing-against-words checks.look.how[0]'] : []);
});

test('a safeguard whose own check runs the engine is told', () => {
  const safeguard = {
    before: { engine: ['running' as const] },
    check: 'look',
    shows: ['whole'],
    else: 'Not so.',
  };
  const idling = withCheck('look', { standing: { engine: 'idling' } });

  expect(toldBy(lintStanding, { ...idling, safeguards: [safeguard] })).toEqual([
    'safeguard-in-danger safeguards[0].check',
  ]);
  expect(toldBy(lintStanding, { ...withCheck('look', {}), safeguards: [safeguard] })).toEqual([]);
});

test('a check before a repair that waits for what the cause spoils is told', () => {
  const before = (check: string) => [
    { before: { repair: ['fuse'] }, check, shows: ['full'], else: 'It would burn again.' },
  ];
  const free = withCheck('volts', { after: { lamp: ['dark'] } });

  const waiting = smallTree({ checks: waitingChecks() });

  expect(toldBy(lintStanding, { ...waiting, safeguards: before('volts') })).toEqual([
    'safeguard-behind-itself safeguards[0].check',
  ]);
  expect(toldBy(lintStanding, { ...free, safeguards: before('volts') })).toEqual([]);
});

test.each<[step: string, standing: Check['standing'], told: boolean]>([
  ['Crank it 5 s.', { engine: 'off' }, true],
  ['Key on. Start the engine and listen.', {}, true],
  ['Lid on, then let it idle.', { engine: 'off' }, true],
  ['Crank it 5 s.', { engine: 'cranking' }, false],
  ['Do not run it again to find out.', { engine: 'off' }, false],
  ['Ask how it cranked.', { engine: 'off' }, false],
])('a step past the safeguard of its tree: "%s" with %o', (step, standing, told) => {
  const tree = withCheck('look', { how: ['Look.', step], standing });
  const oil = {
    before: { engine: ['running' as const] },
    check: 'lamp',
    shows: ['dark'],
    else: 'Not so.',
  };

  expect(toldBy(lintStanding, { ...tree, safeguards: [oil] })).toEqual(
    told ? ['runs-unguarded checks.look.how[1]'] : [],
  );
  expect(toldBy(lintStanding, tree)).toEqual([]);
});
