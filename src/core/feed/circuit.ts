import { trusted } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import type { Element, Network } from './network.ts';
import { nodeOf, plainOf } from './network.ts';
import { battery, elementsOf, emf, meterOhms } from './path.ts';
import type { Change, Regime, Setting } from './path.ts';
import { factorNetwork, floatingParts } from './solve.ts';
import { spreadsOf } from './spread.ts';
import type { Spread } from './spread.ts';

/** Volts, and what each volt of the battery does to them, by node number. */
export type State = { readonly volts: Float64Array; readonly perVolt: Float64Array };

/** One part between two nodes, by number and by name. */
export type Part = {
  readonly id: string;
  readonly ends: readonly [from: string, to: string];
  readonly from: number;
  readonly to: number;
  readonly siemens: number;
  readonly volts: number;
  /** How far a sound one's ohms may differ; nothing for what is known exactly. */
  readonly spread: Spread;
};

/** A feed path with all that is switched, factored: every reading on it is a few sums away. */
export type Circuit = {
  readonly nodes: ReadonlyMap<string, number>;
  readonly parts: ReadonlyMap<string, Part>;
  /** The parts whose ohms are not known exactly. */
  readonly loose: readonly Part[];
  /** Given currents, by part. */
  readonly pushes: ReadonlyMap<string, number>;
  readonly state: State;
  readonly respond: (into: string, out: string) => Float64Array;
};

/** The network of a feed path, which its own check has found sound. A part cut off reads 0 V: the meter's own resistance ties it down. */
export function networkOf(
  feed: Feed,
  setting: Setting,
  regime: Regime,
  changes: readonly Change[] = [],
): Network {
  const reference = feed.battery.negative;
  const stations = new Set(Object.keys(feed.stations));
  const elements = elementsOf(feed, setting, regime, changes);
  const plain = trusted(plainOf({ reference, elements }));
  const alone = [...stations].filter((id) => !plain.nodes.has(id)).map((id) => [id]);
  const ties = [...floatingParts(plain), ...alone].flatMap(([id]): readonly Element[] =>
    id === undefined
      ? []
      : [{ kind: 'resistor', id: `.meter:${id}`, from: id, to: reference, ohms: meterOhms }],
  );
  return { reference, elements: [...elements, ...ties] };
}

const exact: Spread = { deviation: 0, lift: 0 };

export function makeCircuit(
  feed: Feed,
  setting: Setting,
  regime: Regime,
  changes: readonly Change[] = [],
): Circuit {
  const network = networkOf(feed, setting, regime, changes);
  const { plain, volts, respond: ask } = trusted(factorNetwork(network));
  const number = (name: string): number => nodeOf(plain.nodes, name);
  const spreads = spreadsOf(feed);
  const parts = new Map(
    plain.branches.map((branch): [string, Part] => [
      branch.id,
      {
        ...branch,
        ends: [branch.from, branch.to],
        from: number(branch.from),
        to: number(branch.to),
        spread: spreads.get(branch.id) ?? exact,
      },
    ]),
  );
  const answers = new Map<string, Float64Array>();
  const respond = (into: string, out: string): Float64Array => {
    const key = `${into}>${out}`;
    const found = answers.get(key) ?? ask(into, out);
    answers.set(key, found);
    return found;
  };
  const inner = parts.get(battery);
  const perVolt =
    inner === undefined
      ? new Float64Array(plain.nodes.size)
      : respond(feed.battery.positive, emf).map((rise, node) =>
          node === inner.to ? 1 : rise * inner.siemens,
        );
  const pushes = new Map(plain.pushes.map(({ id, amps }) => [id, amps]));
  const loose = [...parts.values()].filter(({ spread }) => spread.deviation > 0);
  const state = { volts: volts(), perVolt };
  return { nodes: plain.nodes, parts, loose, pushes, state, respond };
}
