import * as z from 'zod';
import { netlistOf } from '../../../src/core/feed/netlist.ts';
import type { Network } from '../../../src/core/feed/network.ts';
import { solveNetwork, value } from '../../core/feed/build.ts';

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

export const engine = await import(name).then(
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

/**
 * The volts that the simulator finds for a listing, by the listing's own names. On a busy machine it
 * was once seen to answer something else for a whole tree, and not again (why was not found): it is
 * asked until it answers twice alike.
 */
export async function simulated(text: string): Promise<ReadonlyMap<string, number>> {
  let before = '';
  for (let tries = 0; tries < 6; tries += 1) {
    engine?.setNetList(text);
    const { data } = Output.parse(await engine?.runSim());
    const found = data.map((row): [string, number] => [row.name, row.values[0]!]);
    const now = JSON.stringify(found);
    if (now === before) return new Map(found);
    before = now;
  }
  throw new Error('the simulator does not answer twice alike');
}

/** The largest difference in volts, and in amps of the real sources, between simulator and solver. */
export async function difference(network: Network): Promise<number> {
  const { text, nodes, parts } = value(netlistOf(network, 'comparison'));
  const { volts, amps } = value(solveNetwork(network));
  const found = await simulated(text);
  const apart = [...nodes]
    .filter(([, short]) => short !== '0')
    .map(([node, short]) => Math.abs((found.get(`v(${short})`) ?? NaN) - (volts.get(node) ?? NaN)));
  const sources = [...parts].flatMap(([id, short]) => {
    const simulatedAmps = found.get(`i(v${short.toLowerCase()})`);
    return simulatedAmps === undefined ? [] : [Math.abs(simulatedAmps - (amps.get(id) ?? NaN))];
  });
  return Math.max(...apart, ...sources);
}
