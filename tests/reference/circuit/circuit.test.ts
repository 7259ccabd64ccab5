import { expect, test } from 'vitest';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { feedNamed, value } from '../../core/feed/build.ts';
import { difference, engine } from './simulator.ts';
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
  const network = value(networkOf(feedNamed(feed), { on }, { cold: [], machines: [] }));

  expect(await difference(network)).toBeLessThan(1e-6);
});
