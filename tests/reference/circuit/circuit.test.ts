import { expect, test } from 'vitest';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { lampsOf } from '../../../src/core/feed/lamp.ts';
import { netlistOf } from '../../../src/core/feed/netlist.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { feedNamed, value } from '../../core/feed/build.ts';
import { difference, engine, simulated } from './simulator.ts';
import { randomNetwork } from '../../core/feed/random-network.ts';

test.skipIf(engine === undefined)(
  '200 random circuits: volts and source amps as ngspice has them, within a millionth',
  async () => {
    const differences: number[] = [];
    for (let seed = 0; seed < 200; seed += 1)
      differences.push(await difference(randomNetwork(seed)));

    expect(Math.max(...differences)).toBeLessThan(1e-6);
  },
);

test.skipIf(engine === undefined).each([
  { feed: 'no-supply', on: ['headlamps', 'parking', 'key-run', 'ignition', 'blower'] },
  { feed: 'crank', on: ['key-run', 'key-start', 'ignition', 'starter', 'relay-coil'] },
  { feed: 'charging', on: ['headlamps', 'key-run', 'ignition', 'rotor', 'alternator'] },
  { feed: 'headlamp', on: ['headlamps', 'parking', 'tail'] },
] as const)('the $feed feed: volts as ngspice has them', async ({ feed, on }) => {
  const { regime } = solveFeed(feedNamed(feed), { on });
  const network = networkOf(feedNamed(feed), { on }, regime);

  expect(await difference(network)).toBeLessThan(1e-6);
});

/** The listing with each lamp's resistor made a source that follows the lamp's law by itself. */
function withLaws(
  text: string,
  parts: ReadonlyMap<string, string>,
  lamps: ReturnType<typeof lampsOf>,
): string {
  return lamps.reduce((so, { id, ohms, rated }) => {
    const line = new RegExp(`^${parts.get(id)} (\\S+) (\\S+) .*$`, 'm');
    return so.replace(line, (_line, from: string, to: string) => {
      const volts = from === '0' ? `(-v(${to}))` : to === '0' ? `v(${from})` : `v(${from},${to})`;
      const share = `pow(max(abs(${volts})/${rated},1e-9),0.45)`;
      return `B${parts.get(id)} ${from} ${to} i=${volts}/(${ohms}*max(0.1,${share}))`;
    });
  }, text);
}

test.skipIf(engine === undefined).each([
  { ohms: 0.003, within: 1e-6 },
  { ohms: 0.5, within: 1e-6 },
  { ohms: 5, within: 1e-6 },
  { ohms: 60, within: 1e-6 },
])('lamps behind $ohms ohm burn as ngspice has them by their law alone', async (row) => {
  const feed = feedNamed('no-supply');
  const setting = { on: ['headlamps', 'parking', 'stop'] };
  const changes = [{ kind: 'ohms', part: 'bulk-e:bulk-d', ohms: row.ohms }] as const;
  const state = solveFeed(feed, setting, changes);
  const { text, nodes, parts } = value(
    netlistOf(networkOf(feed, setting, state.regime, changes), 'lamps by their law'),
  );

  const lamps = lampsOf(feed, setting, changes);
  const found = await simulated(withLaws(text, parts, lamps));
  const apart = [...nodes]
    .filter(([name, short]) => short !== '0' && name in feed.stations)
    .map(([name, short]) => Math.abs((found.get(`v(${short})`) ?? NaN) - state.volts(name)));

  expect(lamps).toHaveLength(4);
  expect(Math.max(...apart)).toBeLessThan(row.within);
});
