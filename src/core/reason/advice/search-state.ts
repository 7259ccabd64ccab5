import type { Case, Evidence } from '../belief/evidence.ts';
import type { FaultSet } from '../belief/fault-sets.ts';
import { Space } from './search-tables.ts';

/** The last finding of a check, with the causes that had been mended before it. */
export type Last = {
  readonly lo: number;
  readonly hi: number;
  readonly repaired: number;
  /** Only the owner's word so far: the check itself may still be done. */
  readonly owner: boolean;
};

/** A place on the way. Weights are chances of set and way together: they sum to the way's. */
export type Position = {
  readonly weights: Float64Array;
  readonly mass: number;
  /** The sets less what is mended. */
  readonly left: Int32Array;
  /** Mended causes, as a set. */
  readonly repaired: number;
  readonly opened: number;
  readonly standing: number;
  /** By group of checks. */
  readonly last: readonly (Last | undefined)[];
};

const sum = (values: Float64Array): number => {
  let all = 0;
  for (const value of values) all += value;
  return all;
};

const repairedBefore = (space: Space, at: number): number =>
  space.causes.reduce(
    (mask, cause, place) =>
      (space.given.repairedAt[cause] ?? Infinity) < at ? mask | (1 << place) : mask,
    0,
  );

/** Where the case stands now, with the weights of the fault sets. */
function startPosition(space: Space, weights: readonly number[]): Position {
  const { given } = space;
  const last: (Last | undefined)[] = given.model.checks.map(() => undefined);
  const owners: Evidence | undefined = given.told[0];
  for (const { group, lo, hi, at } of given.evidence) {
    const owner =
      group === owners?.group && !given.told.some((one, i) => i > 0 && one.group === group);
    last[group] = { lo, hi, repaired: repairedBefore(space, at), owner };
  }
  const repaired = repairedBefore(space, Infinity);
  const start = Float64Array.from(weights);
  const all = sum(start);
  return {
    weights: start.map((weight) => weight / all),
    mass: 1,
    left: space.sets.map((set) => set & ~repaired),
    repaired,
    opened: space.costs.opened,
    standing: space.costs.standing,
    last,
  };
}

/** Where the case stands now on a list of fault sets over some of its causes. */
export function startOn(given: Case, causes: readonly number[], sets: readonly FaultSet[]) {
  const space = new Space(given, causes, sets);
  const chances = sets.map(({ chance }) => chance);
  return { space, at: startPosition(space, chances) };
}

/** Chance of at most `result` now where the check was found at `last` before. */
function atMostAgain(space: Space, check: number, sets: { was: number; now: number }, last: Last) {
  const offset = space.offsets[check] ?? 0;
  const now = space.row(sets.now);
  const mended = space.row(sets.was & ~sets.now);
  const background = space.row(0);
  const total = (row: Float64Array, result: number): number =>
    result < 0 ? 0 : (row[offset + result] ?? 1);
  const others = (result: number): number =>
    result < 0 ? 0 : total(mended, result) / total(background, result);
  const below = total(now, last.lo - 1) * others(last.lo - 1);
  const whole = total(now, last.hi) * others(last.hi) - below;
  return (result: number): number => {
    if (result < 0 || whole <= 0) return 0;
    if (result >= last.hi) return 1;
    const here = total(now, result);
    const part =
      result < last.lo
        ? here * (others(last.hi) - others(last.lo - 1))
        : here * others(last.hi) - below;
    return part / whole;
  };
}

/** Whether a check may be done here and can still show something new. */
export function canTell(space: Space, at: Position, check: number): boolean {
  const last = at.last[space.groups[check] ?? check];
  if (last !== undefined) {
    const mendedSince = (at.repaired & ~last.repaired & (space.linked[check] ?? 0)) !== 0;
    if (!(last.owner && last.hi > last.lo) && !(mendedSince && last.lo > 0)) return false;
  }
  return (space.given.model.checks[check]?.after ?? []).every((gate) => {
    const found = at.last[space.groups[gate.check] ?? gate.check];
    if (found === undefined) return false;
    for (let result = found.lo; result <= found.hi; result += 1)
      if (!gate.results.includes(result)) return false;
    return true;
  });
}

/** Running totals of a check in one fault set, from this position on. */
function totalsIn(space: Space, at: Position, check: number, index: number) {
  const left = at.left[index] ?? 0;
  const last = at.last[space.groups[check] ?? check];
  if (last !== undefined) {
    const was = (space.sets[index] ?? 0) & ~last.repaired;
    return atMostAgain(space, check, { was, now: left }, last);
  }
  const row = space.row(left);
  const offset = space.offsets[check] ?? 0;
  return (result: number): number => row[offset + result] ?? 1;
}

/** By result: the weights of the fault sets that go on with it. */
export function split(space: Space, at: Position, check: number): readonly Float64Array[] {
  const results = space.given.model.checks[check]?.results.length ?? 0;
  const parts = Array.from({ length: results }, () => new Float64Array(at.weights.length));
  for (let index = 0; index < at.weights.length; index += 1) {
    const weight = at.weights[index] ?? 0;
    if (weight === 0) continue;
    const atMost = totalsIn(space, at, check, index);
    let below = 0;
    for (const [result, part] of parts.entries()) {
      const upTo = atMost(result);
      part[index] = weight * Math.max(0, upTo - below);
      below = upTo;
    }
  }
  return parts;
}

export function afterCheck(
  space: Space,
  at: Position,
  check: number,
  shown: { readonly result: number; readonly weights: Float64Array },
): Position {
  const { result, weights } = shown;
  const last = { lo: result, hi: result, repaired: at.repaired, owner: false };
  return {
    ...at,
    weights,
    mass: sum(weights),
    opened: at.opened | (space.costs.masks[check] ?? 0),
    standing: space.costs.standingAfter(check, at.standing),
    last: at.last.with(space.groups[check] ?? check, last),
  };
}

/** A cause of the short list mended, and the proof showed the complaint still there. */
export function afterFailedProof(space: Space, at: Position, place: number): Position {
  const bit = 1 << place;
  const weights = at.weights.map((weight, index) => {
    const left = at.left[index] ?? 0;
    return (left & bit) === 0 ? weight : weight * (1 - space.gain(left, place));
  });
  const step = space.costs.repair(space.causes[place] ?? 0);
  const group = space.groups[space.given.model.complaint] ?? 0;
  const hi = at.last[group]?.hi ?? 1;
  const repaired = at.repaired | bit;
  return {
    weights,
    mass: sum(weights),
    left: at.left.map((set) => set & ~bit),
    repaired,
    opened: at.opened | (space.costs.masks[step] ?? 0),
    standing: space.costs.standingAfter(step, at.standing),
    last: at.last.with(group, { lo: 1, hi, repaired, owner: false }),
  };
}
