import { at as entry } from '../../at.ts';
import type { Observation } from './model.ts';
import type { ReasoningInput } from './evidence.ts';
import { atMost } from './tables.ts';
import type { Totals } from './tables.ts';

/**
 * What a cause can do for the abnormal findings of one check. `explains[j]` is the chance that
 * it produces enough for bits `bits[j]`, `bits[j+1]`, ... and no more; `nothing` that it stays
 * below all of them. Usually a check has one bit.
 */
export type Factor = {
  readonly bits: readonly number[];
  readonly explains: readonly number[];
  readonly nothing: number;
};

/** The evidence on one cause alone, and the findings it may explain. */
export type Emission = { readonly base: number; readonly factors: readonly Factor[] };

export type Compiled = {
  readonly background: Emission;
  readonly causes: readonly Emission[];
  /** Number of abnormal findings that want an explanation. */
  readonly bits: number;
  /** The bits of each check, in the order of a factor's `bits`. */
  readonly observables: readonly (readonly number[])[];
};

/** "Result `level` or worse was there at time `at`": to be explained by somebody. */
type LowerBound = { readonly bit: number; readonly level: number; readonly at: number };
type UpperBound = { readonly hi: number; readonly at: number };
type Observable = {
  readonly check: number;
  readonly upperBounds: readonly UpperBound[];
  /** Earliest first; levels fall, because whatever is seen later was there before. */
  readonly lowerBounds: readonly LowerBound[];
};

function lowerBoundsOf(findings: readonly Observation[], firstBit: number): LowerBound[] {
  const lowerBounds: LowerBound[] = [];
  let least = 0;
  for (const { lo, at } of findings.toReversed()) {
    if (lo <= least) continue;
    least = lo;
    lowerBounds.push({ bit: 0, level: lo, at });
  }
  return lowerBounds
    .toReversed()
    .map((lowerBound, index) => ({ ...lowerBound, bit: firstBit + index }));
}

function upperBoundsOf(findings: readonly Observation[]): UpperBound[] {
  let hi = Infinity;
  return findings.map((finding) => {
    hi = Math.min(hi, finding.hi);
    return { hi, at: finding.at };
  });
}

function observablesOf(evidence: readonly Observation[]): Observable[] {
  const groups = Map.groupBy(evidence, (finding) => finding.group);
  let bits = 0;
  return [...groups.values()].map((findings) => {
    const lowerBounds = lowerBoundsOf(findings, bits);
    bits += lowerBounds.length;
    return { check: entry(findings, 0).check, upperBounds: upperBoundsOf(findings), lowerBounds };
  });
}

/** What a cause or the background, there until after `until` repairs, does at one observable. */
function factorOf(observable: Observable, totals: Totals, until: number): Factor | undefined {
  const upper = observable.upperBounds.findLast(({ at }) => at <= until)?.hi;
  if (upper === undefined) return undefined;
  const lowerBounds = observable.lowerBounds.filter(({ at }) => at <= until);
  const lowest = lowerBounds.at(-1)?.level ?? Infinity;
  return {
    bits: lowerBounds.map(({ bit }) => bit),
    explains: lowerBounds.map(({ level }, index) => {
      const most = Math.min(upper, (lowerBounds[index - 1]?.level ?? Infinity) - 1);
      return Math.max(0, atMost(totals, most) - atMost(totals, Math.min(most, level - 1)));
    }),
    nothing: atMost(totals, Math.min(upper, lowest - 1)),
  };
}

function emissionOf(
  observables: readonly Observable[],
  tableOf: (check: number) => Totals | undefined,
  until: number,
): Emission {
  let base = 1;
  const factors: Factor[] = [];
  for (const observable of observables) {
    const totals = tableOf(observable.check);
    const factor = totals === undefined ? undefined : factorOf(observable, totals, until);
    if (factor === undefined) continue;
    if (factor.explains.some((chance) => chance > 0)) factors.push(factor);
    else base *= factor.nothing;
  }
  return { base, factors };
}

/**
 * The evidence as the belief runs over it. A cause's repair takes it out of later findings; of
 * each check only the last time of each level needs explaining, the earlier ones follow.
 */
export function compile(input: ReasoningInput): Compiled {
  const { model, evidence, repairedAt } = input;
  const observables = observablesOf(evidence);
  return {
    background: emissionOf(observables, (check) => model.checks[check]?.background, Infinity),
    causes: model.causes.map((_, cause) =>
      emissionOf(
        observables,
        (check) => model.checks[check]?.links[cause],
        entry(repairedAt, cause),
      ),
    ),
    bits: observables.reduce((all, observable) => all + observable.lowerBounds.length, 0),
    observables: observables
      .map((observable) => observable.lowerBounds.map(({ bit }) => bit))
      .filter((bits) => bits.length > 0),
  };
}
