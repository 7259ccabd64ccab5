import { expect, test } from 'vitest';
import * as z from 'zod';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { netlistOf } from '../../../src/core/feed/netlist.ts';
import type { Network } from '../../../src/core/feed/network.ts';
import { solveNetwork } from '../../../src/core/feed/solve.ts';
import { feedNamed, value } from '../../core/feed/build.ts';
import { randomNetwork } from '../../core/feed/random-network.ts';

/*
 * Outside check: eecircuit-engine 1.8.0 (MIT), which carries ngspice 45.2. It is large, so it is
 * installed on its own: npm install --prefix tests/reference/circuit
 */
const name = 'eecircuit-engine';

type Simulator = {
  readonly start: () => Promise<void>;
  readonly setNetList: (text: string) => void;
  readonly runSim: () => Promise<unknown>;
};

const engine = await import(name).then(
  (module: { readonly Simulation: new () => Simulator }) => new module.Simulation(),
  () => undefined,
);
await engine?.start();
if (engine === undefined)
  process.stderr.write(
    `${name} is not installed, so the solver is not held against it: npm install --prefix tests/reference/circuit\n`,
  );

const Output = z.object({
  data: z.array(z.object({ name: z.string(), values: z.array(z.number()).min(1) })),
});

async function simulated(text: string): Promise<ReadonlyMap<string, number>> {
  engine?.setNetList(text);
  const { data } = Output.parse(await engine?.runSim());
  return new Map(data.map((row): [string, number] => [row.name, row.values[0]!]));
}

/** The largest difference in volts, and in amps of the ideal sources, between simulator and solver. */
async function difference(network: Network): Promise<number> {
  const { text, nodes, parts } = value(netlistOf(network, 'comparison'));
  const { volts, amps } = value(solveNetwork(network));
  const found = await simulated(text);
  const apart = [...nodes]
    .filter(([, short]) => short !== '0')
    .map(([node, short]) => Math.abs((found.get(`v(${short})`) ?? NaN) - (volts.get(node) ?? NaN)));
  const sources = [...parts]
    .filter(([, short]) => short.startsWith('V'))
    .map(([id, short]) =>
      Math.abs((found.get(`i(${short.toLowerCase()})`) ?? NaN) - (amps.get(id) ?? NaN)),
    );
  return Math.max(...apart, ...sources);
}

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
