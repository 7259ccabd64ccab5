import { bad, good } from '../problem.ts';
import type { Parsed, Problem } from '../problem.ts';

type Ends = { readonly id: string; readonly from: string; readonly to: string };

/** Amps are counted from `from` to `to` through the part; of a source, `from` is the plus pole. */
export type Element =
  | (Ends & { readonly kind: 'resistor'; readonly ohms: number })
  | (Ends & { readonly kind: 'source'; readonly volts: number; readonly ohms: number })
  | (Ends & { readonly kind: 'current'; readonly amps: number });

export type Network = { readonly reference: string; readonly elements: readonly Element[] };

/** A resistance with an electromotive force in it: amps = siemens · (V(from) - V(to) - volts). */
export type Branch = Ends & { readonly siemens: number; readonly volts: number };
/** An ideal source: holds V(from) - V(to). */
export type Hold = Ends & { readonly volts: number };
/** A given current. */
type Push = Ends & { readonly amps: number };

/** The network in the three forms the solver knows. */
export type Plain = {
  readonly reference: string;
  readonly nodes: ReadonlyMap<string, number>;
  readonly branches: readonly Branch[];
  readonly holds: readonly Hold[];
  readonly pushes: readonly Push[];
};

/** The number of a node by its name; throws a RangeError for a name that the network has not. */
export function nodeOf(nodes: ReadonlyMap<string, number>, name: string): number {
  const node = nodes.get(name);
  if (node === undefined) throw new RangeError(`The network has no node "${name}".`);
  return node;
}

/** Sorts the elements into what the solver knows, or tells every value that cannot be. */
export function plainOf(network: Network): Parsed<Plain> {
  const problems = checkElements(network);
  if (problems.length > 0) return bad(...problems);
  const nodes = new Map<string, number>([[network.reference, 0]]);
  for (const { from, to } of network.elements)
    for (const name of [from, to]) if (!nodes.has(name)) nodes.set(name, nodes.size);
  return good({
    reference: network.reference,
    nodes,
    branches: network.elements.flatMap(branchOf),
    holds: network.elements.flatMap((part) =>
      part.kind === 'source' && part.ohms === 0 ? [endsOf(part, { volts: part.volts })] : [],
    ),
    pushes: network.elements.flatMap((part) =>
      part.kind === 'current' ? [endsOf(part, { amps: part.amps })] : [],
    ),
  });
}

function endsOf<T extends object>({ id, from, to }: Ends, rest: T): Ends & T {
  return { id, from, to, ...rest };
}

function branchOf(part: Element): readonly Branch[] {
  if (part.kind === 'resistor') return [endsOf(part, { siemens: 1 / part.ohms, volts: 0 })];
  if (part.kind === 'source' && part.ohms > 0)
    return [endsOf(part, { siemens: 1 / part.ohms, volts: part.volts })];
  return [];
}

type Amount = { readonly name: string; readonly amount: number; readonly fits: boolean };

const above = (name: string, amount: number): Amount => ({
  name,
  amount,
  fits: Number.isFinite(amount) && amount > 0,
});
const finite = (name: string, amount: number): Amount => ({
  name,
  amount,
  fits: Number.isFinite(amount),
});

function amountsOf(part: Element): readonly Amount[] {
  if (part.kind === 'resistor') return [above('ohms', part.ohms)];
  if (part.kind === 'current') return [finite('amps', part.amps)];
  return [
    finite('volts', part.volts),
    { name: 'ohms', amount: part.ohms, fits: Number.isFinite(part.ohms) && part.ohms >= 0 },
  ];
}

function checkElements(network: Network): readonly Problem[] {
  const seen = new Set<string>();
  return network.elements.flatMap((part) => {
    const twice = seen.has(part.id);
    seen.add(part.id);
    return [
      ...(twice ? [sameName(part.id)] : []),
      ...amountsOf(part)
        .filter(({ fits }) => !fits)
        .map((amount) => wrongAmount(part, amount)),
    ];
  });
}

const sameName = (id: string): Problem => ({
  code: 'network-same-name',
  message: `Two parts of the circuit are called “${id}”.`,
  mend: 'Give each part its own name.',
  value: id,
});

const wrongAmount = (part: Element, { name, amount }: Amount): Problem => ({
  code: 'network-amount',
  message: `The ${name} of “${part.id}” cannot be ${amount}.`,
  mend:
    part.kind === 'source' && name === 'ohms'
      ? 'Give 0 for a perfect source, or a positive number.'
      : `Give ${name} as a ${name === 'volts' || name === 'amps' ? 'finite' : 'positive'} number.`,
  path: part.id,
  value: String(amount),
});
