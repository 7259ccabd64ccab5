import { at } from '../at.ts';
import { bad, good } from '../problem.ts';
import type { Parsed, Problem } from '../problem.ts';
import { eliminate } from './eliminate.ts';
import { holdTogether } from './hold.ts';
import type { Held } from './hold.ts';
import { nodeOf, plainOf } from './network.ts';
import type { Branch, Network, Plain } from './network.ts';

/** A network that is factored once and asked many times; vectors go by node number. */
export type Factored = {
  readonly plain: Plain;
  /** Volts with every source at work. */
  readonly volts: () => Float64Array;
  /** Volts that one ampere pushed in at `into` and taken out at `out` makes, all sources dead. */
  readonly respond: (into: string, out: string) => Float64Array;
};

/** DC nodal analysis; floating parts, shorted sources and wrong amounts are Problems, never NaN. */
export function factorNetwork(network: Network): Parsed<Factored> {
  const parsed = plainOf(network);
  if (parsed.kind === 'bad') return parsed;
  const plain = parsed.value;
  const held = holdTogether(plain);
  if (held.kind === 'bad') return held;
  const floating = floatingParts(plain);
  if (floating.length > 0) return bad(...floating.map(floats));
  return good(factor(plain, held.value));
}

/** Adds what leaves the first node and enters the second. */
function push(nodes: Float64Array, [from, to]: readonly [number, number], amps: number): void {
  nodes[from] = at(nodes, from) + amps;
  nodes[to] = at(nodes, to) - amps;
}

function factor(plain: Plain, held: Held): Factored {
  const size = plain.nodes.size;
  const rootOf = (name: string): number => at(held.root, nodeOf(plain.nodes, name));
  const aboveOf = (name: string): number => at(held.above, nodeOf(plain.nodes, name));
  const toReference = new Float64Array(size);
  const edges = plain.branches.flatMap(({ from, to, siemens }) => {
    const [near, far] = [rootOf(from), rootOf(to)];
    if (near !== 0 && far !== 0) return [{ from: near, to: far, siemens }];
    const node = near === 0 ? far : near;
    toReference[node] = at(toReference, node) + siemens;
    return [];
  });
  const { solve } = eliminate(size, edges, toReference);
  /** The reference's own part is known: nothing pushed into it changes its volts. */
  const answer = (amps: Float64Array): Float64Array => {
    amps[0] = 0;
    const volts = solve(amps);
    volts[0] = 0;
    return volts;
  };
  const bias = (branch: Branch): number =>
    branch.siemens * (aboveOf(branch.from) - aboveOf(branch.to) - branch.volts);
  const volts = (): Float64Array => {
    const amps = new Float64Array(size);
    for (const branch of plain.branches)
      push(amps, [rootOf(branch.to), rootOf(branch.from)], bias(branch));
    for (const { from, to, amps: given } of plain.pushes)
      push(amps, [rootOf(to), rootOf(from)], given);
    return spread(held, answer(amps), (node) => at(held.above, node));
  };
  const respond = (into: string, out: string): Float64Array => {
    const amps = new Float64Array(size);
    push(amps, [rootOf(into), rootOf(out)], 1);
    return spread(held, answer(amps), () => 0);
  };
  return { plain, volts, respond };
}

/** From the volts of the roots to the volts of every node. */
function spread(held: Held, roots: Float64Array, above: (node: number) => number): Float64Array {
  return Float64Array.from(held.root, (root, node) => at(roots, root) + above(node));
}

/** Groups of nodes that nothing resistive or held joins to the reference. */
export function floatingParts(plain: Plain): readonly (readonly string[])[] {
  const joined = new Map<string, string[]>([...plain.nodes.keys()].map((name) => [name, []]));
  for (const { from, to } of [...plain.branches, ...plain.holds]) {
    joined.get(from)?.push(to);
    joined.get(to)?.push(from);
  }
  const seen = new Set<string>();
  const reach = (start: string): readonly string[] => {
    const part = [start];
    seen.add(start);
    for (const name of part)
      for (const next of joined.get(name) ?? [])
        if (!seen.has(next)) {
          seen.add(next);
          part.push(next);
        }
    return part;
  };
  reach(plain.reference);
  return [...plain.nodes.keys()].flatMap((name) => (seen.has(name) ? [] : [reach(name)]));
}

const floats = (part: readonly string[]): Problem => ({
  code: 'network-floating',
  message: `Nothing joins ${part.slice(0, 5).join(', ')}${part.length > 5 ? ` and ${part.length - 5} more` : ''} to the reference, so no volts can be told there.`,
  mend: 'Join that part by a wire or a resistance, or leave it out.',
  path: part[0] ?? '',
  value: part.slice(0, 5).join(', '),
});
