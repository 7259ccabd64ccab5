import type { Case, Evidence } from './evidence.ts';
import { atMost } from './tables.ts';
import type { Totals } from './tables.ts';

/**
 * What a cause can do for the abnormal findings of one check. `explains[j]` is the chance that
 * it produces enough for bits `bits[j]`, `bits[j+1]`, ... and no more; `nothing` that it stays
 * below all of them. Usually a check has one bit.
 */
export type Touch = {
  readonly bits: readonly number[];
  readonly explains: readonly number[];
  readonly nothing: number;
};

/** The evidence on one cause alone, and the findings it may explain. */
export type Producer = { readonly base: number; readonly touches: readonly Touch[] };

export type Compiled = {
  readonly background: Producer;
  readonly causes: readonly Producer[];
  /** Number of abnormal findings that want an explanation. */
  readonly bits: number;
  /** The bits of each check, in the order of a touch's `bits`. */
  readonly things: readonly (readonly number[])[];
};

/** "Result `level` or worse was there at time `at`": to be explained by somebody. */
type Need = { readonly bit: number; readonly level: number; readonly at: number };
type Cap = { readonly hi: number; readonly at: number };
type Thing = {
  readonly check: number;
  readonly caps: readonly Cap[];
  /** Earliest first; levels fall, because whatever is seen later was there before. */
  readonly needs: readonly Need[];
};

function needsOf(findings: readonly Evidence[], firstBit: number): Need[] {
  const needs: Need[] = [];
  let least = 0;
  for (const { lo, at } of findings.toReversed()) {
    if (lo <= least) continue;
    least = lo;
    needs.push({ bit: 0, level: lo, at });
  }
  return needs.toReversed().map((need, index) => ({ ...need, bit: firstBit + index }));
}

function capsOf(findings: readonly Evidence[]): Cap[] {
  let hi = Infinity;
  return findings.map((finding) => {
    hi = Math.min(hi, finding.hi);
    return { hi, at: finding.at };
  });
}

function thingsOf(evidence: readonly Evidence[]): Thing[] {
  const groups = Map.groupBy(evidence, (finding) => finding.group);
  let bits = 0;
  return [...groups.values()].map((findings) => {
    const needs = needsOf(findings, bits);
    bits += needs.length;
    return { check: findings[0]?.check ?? 0, caps: capsOf(findings), needs };
  });
}

/** A touch of one thing by a producer that is there until after `until` repairs. */
function touchOf(thing: Thing, totals: Totals, until: number): Touch | undefined {
  const cap = thing.caps.findLast(({ at }) => at <= until)?.hi;
  if (cap === undefined) return undefined;
  const needs = thing.needs.filter(({ at }) => at <= until);
  const lowest = needs.at(-1)?.level ?? Infinity;
  return {
    bits: needs.map(({ bit }) => bit),
    explains: needs.map(({ level }, index) => {
      const most = Math.min(cap, (needs[index - 1]?.level ?? Infinity) - 1);
      return Math.max(0, atMost(totals, most) - atMost(totals, Math.min(most, level - 1)));
    }),
    nothing: atMost(totals, Math.min(cap, lowest - 1)),
  };
}

function producerOf(
  things: readonly Thing[],
  tableOf: (check: number) => Totals | undefined,
  until: number,
): Producer {
  let base = 1;
  const touches: Touch[] = [];
  for (const thing of things) {
    const totals = tableOf(thing.check);
    const touch = totals === undefined ? undefined : touchOf(thing, totals, until);
    if (touch === undefined) continue;
    if (touch.explains.some((chance) => chance > 0)) touches.push(touch);
    else base *= touch.nothing;
  }
  return { base, touches };
}

/**
 * The evidence as the belief runs over it. A cause's repair takes it out of later findings; of
 * each check only the last time of each level needs explaining, the earlier ones follow.
 */
export function compile(given: Case): Compiled {
  const { model, evidence, repairedAt } = given;
  const things = thingsOf(evidence);
  return {
    background: producerOf(things, (check) => model.checks[check]?.background, Infinity),
    causes: model.causes.map((_, cause) =>
      producerOf(
        things,
        (check) => model.checks[check]?.links[cause],
        repairedAt[cause] ?? Infinity,
      ),
    ),
    bits: things.reduce((all, thing) => all + thing.needs.length, 0),
    things: things
      .map((thing) => thing.needs.map(({ bit }) => bit))
      .filter((bits) => bits.length > 0),
  };
}
