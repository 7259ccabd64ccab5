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
  readonly getInfo: () => string;
};

const made = await import(name).then(
  (module: { readonly Simulation: new () => Simulator }) => () => new module.Simulation(),
  () => undefined,
);
export let engine = made?.();
await engine?.start();
if (engine === undefined)
  process.stderr.write(
    `${name} is not installed, so the solver is not held against it: npm install --prefix tests/reference/circuit\n`,
  );

const Output = z.object({
  header: z.string(),
  data: z.array(z.object({ name: z.string(), values: z.array(z.number()).min(1) })),
});

let asked = 0;

/**
 * The volts that the simulator finds for a listing, by the listing's own names. A run that fails
 * inside the engine leaves the answer of the run before in its file, and the engine hands that out
 * (seen twice for whole trees, by its source): so each listing gets a title of its own, an answer under
 * another title is none, and a new engine is asked.
 */
export async function simulated(text: string): Promise<ReadonlyMap<string, number>> {
  const told: string[] = [];
  for (let tries = 0; tries < 4; tries += 1) {
    const title = `listing ${(asked += 1)}`;
    engine?.setNetList(text.replace(/^.*/, title));
    const { header, data } = Output.parse(await engine?.runSim());
    if (/^Title: *(.*?)\s*$/m.exec(header)?.[1] === title)
      return new Map(data.map((row): [string, number] => [row.name, row.values[0]!]));
    told.push(engine?.getInfo() ?? '');
    engine = made?.();
    await engine?.start();
  }
  throw new Error(`four engines did not answer the listing: ${told.join('\n')}`);
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
