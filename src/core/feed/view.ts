import { good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { makeCircuit } from './circuit.ts';
import type { Circuit, Part, State } from './circuit.ts';
import { battery, batteryOf, spanId } from './path.ts';
import type { Change, Regime, Setting } from './path.ts';
import { keyOf, settle } from './settle.ts';

/** A circuit as one fault leaves it: volts everywhere, and what one ampere does between two stations. */
export type View = State & {
  readonly circuit: Circuit;
  readonly respond: (into: string, out: string) => Float64Array;
  /** The changed part, and its conductance now. */
  readonly changed?: { readonly part: Part; readonly siemens: number };
};

/** Keeps what was worked out for a feed path as long as that feed path itself is kept. */
export type Memo = <T>(feed: Feed, key: string, make: () => T) => T;

export function makeMemo(): Memo {
  const kept = new WeakMap<Feed, Map<string, unknown>>();
  return <T>(feed: Feed, key: string, make: () => T): T => {
    const shelf = kept.get(feed) ?? new Map<string, unknown>();
    kept.set(feed, shelf);
    // A key names the kind of thing as well as the thing: what is found was made by the same call.
    if (!shelf.has(key)) shelf.set(key, make());
    return shelf.get(key) as T;
  };
}

export const settingKey = ({ on, battery: place = 'in', filaments }: Setting): string =>
  `${[...new Set(on)].toSorted().join(',')}|${place}|${filaments ?? ''}`;

export type Question = {
  readonly feed: Feed;
  readonly setting: Setting;
  readonly memo: Memo;
};

/** The circuit with one change in it, lamps and machines settled. */
export function viewOf(question: Question, change: Change | undefined): Parsed<View> {
  const settled = settle(
    question,
    (regime) => viewIn(question, regime, change),
    ({ circuit, volts }, station) => volts[circuit.nodes.get(station) ?? -1] ?? 0,
  );
  return settled.kind === 'bad' ? settled : good(settled.value.value);
}

function viewIn(question: Question, regime: Regime, change: Change | undefined): Parsed<View> {
  const { feed } = question;
  const leak =
    change?.kind === 'open'
      ? feed.spans.find((span) => spanId(span) === change.part)?.leak
      : undefined;
  if (change?.kind === 'open' && leak === undefined) {
    const circuit = circuitIn(question, regime, change);
    return circuit.kind === 'bad' ? circuit : good(whole(circuit.value));
  }
  const circuit = circuitIn(question, regime);
  if (circuit.kind === 'bad') return circuit;
  if (change === undefined) return good(whole(circuit.value));
  if (change.kind === 'battery') return good(withBattery(question, circuit.value, change));
  const ohms = change.kind === 'ohms' ? change.ohms : leak;
  return good(withOhms(circuit.value, change.part, ohms));
}

function circuitIn(
  { feed, setting, memo }: Question,
  regime: Regime,
  open?: Change & { kind: 'open' },
): Parsed<Circuit> {
  const key = `circuit|${settingKey(setting)}|${keyOf(regime)}|${open?.part ?? ''}`;
  return memo(feed, key, () =>
    makeCircuit(feed, setting, regime, open === undefined ? [] : [open]),
  );
}

const whole = (circuit: Circuit): View => ({
  circuit,
  ...circuit.state,
  respond: circuit.respond,
});

/**
 * The circuit with one part's ohms changed, without solving it again: with u the answer to one
 * ampere across the part, V' = V - Δg·(Va - Vb) / (1 + Δg·(ua - ub)) · u (the formula of Sherman
 * and Morrison for a change of rank one).
 */
function withOhms(circuit: Circuit, id: string, ohms: number | undefined): View {
  const part = circuit.parts.get(id);
  if (part === undefined || ohms === undefined) return whole(circuit);
  const siemens = 1 / ohms;
  const grown = siemens - part.siemens;
  const answer = circuit.respond(...part.ends);
  const across = (of: Float64Array): number => (of[part.from] ?? 0) - (of[part.to] ?? 0);
  const share = grown / (1 + grown * across(answer));
  const shift = (vector: Float64Array): Float64Array => {
    const step = share * across(vector);
    const shifted = new Float64Array(vector.length);
    // A plain loop: this runs thousands of times for the evidence of one tree.
    for (let node = 0; node < shifted.length; node += 1)
      shifted[node] = (vector[node] ?? 0) - step * (answer[node] ?? 0);
    return shifted;
  };
  return {
    circuit,
    volts: shift(circuit.state.volts),
    perVolt: shift(circuit.state.perVolt),
    respond: (into, out) => shift(circuit.respond(into, out)),
    changed: { part, siemens },
  };
}

function withBattery(
  { feed, setting }: Question,
  circuit: Circuit,
  { volts, ohms }: Change & { kind: 'battery' },
): View {
  const view = withOhms(circuit, battery, ohms);
  const fallen = volts - batteryOf(feed, setting).volts;
  return {
    ...view,
    volts: view.volts.map((found, node) => found + fallen * (view.perVolt[node] ?? 0)),
  };
}
