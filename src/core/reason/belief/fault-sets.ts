import { at } from '../../at.ts';
import { unlisted } from '../../tree/model.ts';
import type { ReasoningInput } from './evidence.ts';
import { compile } from './compile.ts';
import type { Compiled, Emission, Factor } from './compile.ts';
import { applyFactor } from './messages.ts';
import type { States } from './messages.ts';

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
const shortlistLength = 14;
const usualSize = 3;
const greatestSize = 4;
const enoughCoverage = 0.98;

/** Factors with their bits as places within the one check. */
type LocalFactor = {
  readonly observable: number;
  readonly factor: Parameters<typeof applyFactor>[1];
};

function localFactors(compiled: Compiled, emission: Emission): LocalFactor[] {
  return emission.factors.map(({ bits, explains, nothing }: Factor) => {
    const observable = compiled.observables.findIndex((all) =>
      bits.every((bit) => all.includes(bit)),
    );
    const places = bits.map((bit) => at(compiled.observables, observable).indexOf(bit));
    return { observable, factor: { places, explains, nothing } };
  });
}

/** Some causes of a set, weighed as far as they go: what they explain, and the logarithm of the rest. */
type Part = { readonly observables: readonly States[]; readonly log: number };

/** Weighs fault sets: a plain product over the checks, no other set is needed for it. */
export class SetWeigher {
  /** No cause at all: the background alone. */
  readonly none: Part;
  readonly #localFactors: readonly (readonly LocalFactor[])[];
  /** By cause: logarithm of its presence, with the evidence on it alone, over its absence. */
  readonly #gains: readonly number[];

  constructor(input: ReasoningInput, compiled: Compiled) {
    const observables = compiled.observables.map((bits) => {
      const states = new Float64Array(2 ** bits.length);
      states[0] = 1;
      return states;
    });
    for (const { observable, factor } of localFactors(compiled, compiled.background)) {
      const states = observables[observable];
      if (states !== undefined) applyFactor(states, factor);
    }
    const { causes } = input.model;
    const absent = causes.map(({ prior }) => Math.log1p(-prior));
    this.none = {
      observables,
      log: absent.reduce((all, log) => all + log, Math.log(compiled.background.base)),
    };
    this.#localFactors = compiled.causes.map((cause) => localFactors(compiled, cause));
    this.#gains = causes.map(
      ({ prior }, cause) =>
        Math.log(prior) + Math.log(at(compiled.causes, cause).base) - at(absent, cause),
    );
  }

  /** The same set with one cause more; only the observables of that cause are copied. */
  with(part: Part, cause: number): Part {
    const log = part.log + at(this.#gains, cause);
    const own = at(this.#localFactors, cause);
    if (own.length === 0) return { observables: part.observables, log };
    const observables = [...part.observables];
    for (const { observable, factor } of own) {
      const before = part.observables[observable];
      const states = observables[observable] === before ? before?.slice() : observables[observable];
      if (states === undefined) continue;
      applyFactor(states, factor);
      observables[observable] = states;
    }
    return { observables, log };
  }

  /** Logarithm of P(exactly the causes of this part, and the evidence). */
  whole({ observables, log }: Part): number {
    let all = log;
    for (const states of observables) all += Math.log(states.at(-1) ?? 1);
    return all;
  }

  /** Logarithm of P(exactly these causes, and the evidence). */
  log(causes: readonly number[]): number {
    return this.whole(causes.reduce((part, cause) => this.with(part, cause), this.none));
  }
}

type Weighed = { readonly causes: readonly number[]; readonly log: number };

/** All sets of one size out of some causes, each built from the one without its last cause. */
function weighed(weigher: SetWeigher, from: readonly number[], size: number): readonly Weighed[] {
  const all: Weighed[] = [];
  const grow = (part: Part, causes: readonly number[], first: number): void => {
    if (causes.length === size) {
      const log = weigher.whole(part);
      if (log > -Infinity) all.push({ causes, log });
      return;
    }
    const last = from.length - (size - causes.length);
    for (let index = first; index <= last; index += 1) {
      const cause = at(from, index);
      grow(weigher.with(part, cause), [...causes, cause], index + 1);
    }
  };
  grow(weigher.none, [], 0);
  return all;
}

/** Indexes of the likeliest causes, and the unlisted one, rising. */
export function shortlist(chances: readonly number[], ids: readonly string[]): readonly number[] {
  const ranked = chances
    .map((chance, cause) => ({ chance, cause }))
    .filter(({ cause }) => ids[cause] !== unlisted)
    .toSorted((one, other) => other.chance - one.chance || one.cause - other.cause)
    .slice(0, shortlistLength)
    .map(({ cause }) => cause);
  const other = ids.indexOf(unlisted);
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
export function faultSets(
  input: ReasoningInput,
  from: readonly number[],
  logEvidence?: number,
): FaultSets {
  const weigher = new SetWeigher(input, compile(input));
  const listed: Weighed[] = [];
  let logListed = -Infinity;
  for (let size = 0; size <= greatestSize; size += 1) {
    const covered = logEvidence === undefined ? 0 : Math.exp(logListed - logEvidence);
    if (size > usualSize && covered >= enoughCoverage) break;
    listed.push(...weighed(weigher, from, size));
    logListed = logSum(listed.map(({ log }) => log));
  }
  const whole = logEvidence ?? logListed;
  const sets = listed
    .map(({ causes, log }) => ({ causes, chance: Math.exp(log - whole) }))
    .toSorted((one, other) => other.chance - one.chance);
  return { sets, logEvidence: logListed };
}

/** Every possible fault set with the chance of it and the evidence together, whatever its size. */
export function everySet(input: ReasoningInput): readonly FaultSet[] {
  const { causes } = input.model;
  const weigher = new SetWeigher(input, compile(input));
  return Array.from({ length: 2 ** causes.length }, (_, mask) => {
    const present = causes.flatMap((_cause, index) => ((mask & (1 << index)) === 0 ? [] : [index]));
    return { causes: present, chance: Math.exp(weigher.log(present)) };
  }).filter(({ chance }) => chance > 0);
}
