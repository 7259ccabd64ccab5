import { at as entry } from '../../at.ts';
import type { Observation } from './model.ts';
import type { ReasoningInput } from './evidence.ts';
import { atMost } from './tables.ts';
import type { Totals } from '../../tree/noisy-max.ts';

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
  /** The highest level first: who produces one of them explains all that follow as well. */
  readonly lowerBounds: readonly LowerBound[];
};

/**
 * What is to be explained: of each level the last time, since whatever is seen later was there
 * before. Only a fault that came between was not, so what was seen before it stands by itself.
 */
function lowerBoundsOf(
  findings: readonly Observation[],
  firstBit: number,
  arrivals: readonly number[],
): LowerBound[] {
  const lowerBounds: LowerBound[] = [];
  let least = 0;
  let after = Infinity;
  for (const { lo, at } of findings.toReversed()) {
    const seen = after;
    if (arrivals.some((arrival) => at < arrival && arrival <= seen)) least = 0;
    after = at;
    if (lo <= least) continue;
    least = lo;
    lowerBounds.push({ bit: 0, level: lo, at });
  }
  return lowerBounds
    .toReversed()
    .toSorted((one, other) => other.level - one.level)
    .map((lowerBound, index) => ({ ...lowerBound, bit: firstBit + index }));
}

function observablesOf(
  evidence: readonly Observation[],
  arrivals: readonly number[],
): Observable[] {
  const groups = Map.groupBy(evidence, (finding) => finding.group);
  let bits = 0;
  return [...groups.values()].map((findings) => {
    const lowerBounds = lowerBoundsOf(findings, bits, arrivals);
    bits += lowerBounds.length;
    return { check: entry(findings, 0).check, upperBounds: findings, lowerBounds };
  });
}

/** From how many repairs on, and until after how many, a cause is there. */
type Span = { readonly from: number; readonly until: number };
const always: Span = { from: 0, until: Infinity };

/** What a cause or the background does at one observable while it is there. */
function factorOf(
  observable: Observable,
  totals: Totals,
  { from, until }: Span,
): Factor | undefined {
  const thereAt = ({ at }: { readonly at: number }): boolean => from <= at && at <= until;
  let upper: number | undefined;
  for (const bound of observable.upperBounds)
    if (thereAt(bound)) upper = Math.min(upper ?? Infinity, bound.hi);
  if (upper === undefined) return undefined;
  const most = upper;
  const lowerBounds = observable.lowerBounds.filter(thereAt);
  const lowest = lowerBounds.at(-1)?.level ?? Infinity;
  return {
    bits: lowerBounds.map(({ bit }) => bit),
    explains: lowerBounds.map(({ level }, index) => {
      const under = Math.min(most, (lowerBounds[index - 1]?.level ?? Infinity) - 1);
      return Math.max(0, atMost(totals, under) - atMost(totals, Math.min(under, level - 1)));
    }),
    nothing: atMost(totals, Math.min(most, lowest - 1)),
  };
}

function emissionOf(
  observables: readonly Observable[],
  tableOf: (check: number) => Totals | undefined,
  span: Span,
): Emission {
  let base = 1;
  const factors: Factor[] = [];
  for (const observable of observables) {
    const totals = tableOf(observable.check);
    const factor = totals === undefined ? undefined : factorOf(observable, totals, span);
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
  const { model, evidence, repairedAt, arrivedAt } = input;
  const arrivals = arrivedAt.filter((at) => at > 0);
  const observables = observablesOf(evidence, arrivals);
  return {
    background: emissionOf(observables, (check) => model.checks[check]?.background, always),
    causes: model.causes.map((_, cause) =>
      emissionOf(observables, (check) => model.checks[check]?.links[cause], {
        from: entry(arrivedAt, cause),
        until: entry(repairedAt, cause),
      }),
    ),
    bits: observables.reduce((all, observable) => all + observable.lowerBounds.length, 0),
    observables: observables
      .map((observable) => observable.lowerBounds.map(({ bit }) => bit))
      .filter((bits) => bits.length > 0),
  };
}
