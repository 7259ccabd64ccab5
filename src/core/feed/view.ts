import type { Circuit, Part, State } from './circuit.ts';

/** A circuit with some parts exchanged: volts everywhere, and what one ampere does between two stations. */
export type View = State & {
  readonly circuit: Circuit;
  readonly exchanges: readonly Exchange[];
};

/** One part taken out for another: what the circuit answers to that. */
type Exchange = {
  readonly part: Part;
  /** Volts of every node for one ampere across the part, before it was exchanged. */
  readonly answer: Float64Array;
  readonly grown: number;
  readonly stiffness: number;
};

/** The view of a circuit as it was made. */
export const whole = (circuit: Circuit): View => ({ circuit, ...circuit.state, exchanges: [] });

/** Volts of every node for one ampere pushed in at one station and taken out at another. */
export function respond(view: View, into: string, out: string): Float64Array {
  const answer = view.circuit.respond(into, out);
  if (view.exchanges.length === 0) return answer;
  const shifted = Float64Array.from(answer);
  for (const exchanged of view.exchanges) shift(shifted, exchanged, 0);
  return shifted;
}

/** A part as it stands in the view. */
export const partIn = (view: View, id: string): Part | undefined =>
  view.exchanges.findLast(({ part }) => part.id === id)?.part ?? view.circuit.parts.get(id);

type Ends = { readonly from: number; readonly to: number };

/** Volts from one node of a part to the other. */
export const across = (volts: Float64Array, { from, to }: Ends): number =>
  voltsAt(volts, from) - voltsAt(volts, to);

/** Volts of a node by its number; a station that is no node of the circuit reads nothing. */
const voltsAt = (volts: Float64Array, node: number): number => volts[node] ?? 0;

/**
 * The view with one part exchanged, without solving again: with u the answer to one ampere across
 * the part, g(x - E) its amps before and g'(x' - E') after, x' = x - (ua - ub)·d where d, the amps
 * it draws more, is ((g' - g)·x - (g'E' - gE)) / (1 + (g' - g)·(ua - ub)); every volt moves by -d·u
 * (the formula of Sherman and Morrison for a change of rank one). A part that does not conduct
 * stays out.
 */
export function exchange(
  view: View,
  id: string,
  { siemens, volts = 0 }: { readonly siemens: number; readonly volts?: number },
): View {
  const part = partIn(view, id);
  if (part === undefined) return view;
  const grown = siemens - part.siemens;
  const answer = respond(view, ...part.ends);
  const stiffness = 1 + grown * across(answer, part);
  const force = siemens * volts - part.siemens * part.volts;
  const exchanged = { part: { ...part, siemens, volts }, answer, grown, stiffness };
  return {
    circuit: view.circuit,
    volts: shift(Float64Array.from(view.volts), exchanged, force),
    perVolt: shift(Float64Array.from(view.perVolt), exchanged, 0),
    exchanges: [...view.exchanges, exchanged],
  };
}

/** Moves volts in place to where the exchange leaves them; `force` is the current of its own volts. */
function shift(volts: Float64Array, { part, answer, grown, stiffness }: Exchange, force: number) {
  const more = (grown * across(volts, part) - force) / stiffness;
  // A plain loop: this runs thousands of times for the evidence of one tree.
  for (let node = 0; node < volts.length; node += 1)
    volts[node] = (volts[node] ?? 0) - more * (answer[node] ?? 0);
  return volts;
}
