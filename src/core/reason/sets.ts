import type { Case } from './case.ts';
import { compile } from './compile.ts';
import type { Compiled, Producer, Touch } from './compile.ts';
import { applyTouch } from './tape.ts';
import type { States } from './tape.ts';

/** One way the vehicle may be: exactly these causes, with its share of the listed evidence. */
export type FaultSet = {
  /** Cause indexes, rising. */
  readonly causes: readonly number[];
  /** Its chance among all ways, listed or not, as far as that is known. */
  readonly chance: number;
};

export type FaultSets = {
  /** Likeliest first; ties in the order of the causes. */
  readonly sets: readonly FaultSet[];
  /** Logarithm of P(evidence and one of these sets). */
  readonly logEvidence: number;
};

/** A list of sets is drawn from this many likeliest causes, and the unlisted one. */
export const shortlistLength = 14;
const usualSize = 3;
const greatestSize = 4;
const enoughCoverage = 0.98;

/** Touches with their bits as places within the one check. */
type LocalTouch = { readonly thing: number; readonly touch: Parameters<typeof applyTouch>[1] };

function localTouches(compiled: Compiled, producer: Producer): LocalTouch[] {
  return producer.touches.map(({ bits, explains, nothing }: Touch) => {
    const thing = compiled.things.findIndex((all) => bits.every((bit) => all.includes(bit)));
    const places = bits.map((bit) => compiled.things[thing]?.indexOf(bit) ?? 0);
    return { thing, touch: { places, explains, nothing } };
  });
}

/** Weighs one fault set: a plain product over the checks, no other set is needed for it. */
export class SetWeigher {
  readonly #things: readonly States[];
  readonly #locals: readonly (readonly LocalTouch[])[];
  readonly #present: readonly number[];
  readonly #absent: readonly number[];
  readonly #background: number;

  constructor(given: Case, compiled: Compiled) {
    const things = compiled.things.map((bits) => {
      const states = new Float64Array(2 ** bits.length);
      states[0] = 1;
      return states;
    });
    for (const { thing, touch } of localTouches(compiled, compiled.background)) {
      const states = things[thing];
      if (states !== undefined) applyTouch(states, touch);
    }
    this.#things = things;
    this.#background = Math.log(compiled.background.base);
    this.#locals = compiled.causes.map((cause) => localTouches(compiled, cause));
    this.#absent = given.model.causes.map(({ prior }) => Math.log1p(-prior));
    this.#present = given.model.causes.map(
      ({ prior }, cause) => Math.log(prior) + Math.log(compiled.causes[cause]?.base ?? 1),
    );
  }

  /** Logarithm of P(exactly these causes, and the evidence). */
  log(causes: readonly number[]): number {
    let log = this.#background;
    for (const value of this.#absent) log += value;
    for (const cause of causes) log += (this.#present[cause] ?? 0) - (this.#absent[cause] ?? 0);
    const things = this.#things.map((states) => states.slice());
    for (const cause of causes)
      for (const { thing, touch } of this.#locals[cause] ?? []) {
        const states = things[thing];
        if (states !== undefined) applyTouch(states, touch);
      }
    for (const states of things) log += Math.log(states.at(-1) ?? 1);
    return log;
  }
}

function* choose(from: readonly number[], size: number, first = 0): Generator<readonly number[]> {
  if (size === 0) yield [];
  for (let index = first; size > 0 && index < from.length; index += 1)
    for (const rest of choose(from, size - 1, index + 1)) yield [from[index] ?? 0, ...rest];
}

/** Indexes of the likeliest causes, and the unlisted one, rising. */
export function shortlist(chances: readonly number[], ids: readonly string[]): readonly number[] {
  const ranked = chances
    .map((chance, cause) => ({ chance, cause }))
    .filter(({ cause }) => ids[cause] !== 'unlisted')
    .toSorted((one, other) => other.chance - one.chance || one.cause - other.cause)
    .slice(0, shortlistLength)
    .map(({ cause }) => cause);
  const other = ids.indexOf('unlisted');
  return [...ranked, ...(other < 0 ? [] : [other])].toSorted((one, two) => one - two);
}

export function logSum(logs: readonly number[]): number {
  const most = Math.max(-Infinity, ...logs);
  if (most === -Infinity) return most;
  return most + Math.log(logs.reduce((all, log) => all + Math.exp(log - most), 0));
}

/**
 * Fault sets of sizes up to 3, or 4 where those hold less than 98 % of the evidence.
 * `logEvidence` is the whole evidence where it is known; without it chances are among the sets.
 */
export function faultSets(given: Case, from: readonly number[], logEvidence?: number): FaultSets {
  const weigher = new SetWeigher(given, compile(given));
  const weighed: { causes: readonly number[]; log: number }[] = [];
  let logListed = -Infinity;
  for (let size = 0; size <= greatestSize; size += 1) {
    const covered = logEvidence === undefined ? 0 : Math.exp(logListed - logEvidence);
    if (size > usualSize && covered >= enoughCoverage) break;
    for (const causes of choose(from, size)) {
      const log = weigher.log(causes);
      if (log > -Infinity) weighed.push({ causes, log });
    }
    logListed = logSum(weighed.map(({ log }) => log));
  }
  const whole = logEvidence ?? logListed;
  const sets = weighed
    .map(({ causes, log }) => ({ causes, chance: Math.exp(log - whole) }))
    .toSorted((one, other) => other.chance - one.chance);
  return { sets, logEvidence: logListed };
}

/** Every possible fault set with the chance of it and the evidence together, whatever its size. */
export function everySet(given: Case): readonly FaultSet[] {
  const { causes } = given.model;
  const weigher = new SetWeigher(given, compile(given));
  return Array.from({ length: 2 ** causes.length }, (_, mask) => {
    const present = causes.flatMap((_cause, index) => ((mask & (1 << index)) === 0 ? [] : [index]));
    return { causes: present, chance: Math.exp(weigher.log(present)) };
  }).filter(({ chance }) => chance > 0);
}
