import { at as entryOf, realAt, wholeAt } from '../../at.ts';
import { sum } from '../../sum.ts';
import type { Gate, Observation } from '../belief/model.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import type { FaultSet } from '../belief/fault-sets.ts';
import { SearchTables } from './search-tables.ts';

/** The last finding of a check, with the causes that had been mended before it. */
type Last = {
  readonly lo: number;
  readonly hi: number;
  readonly repaired: number;
  /** Only the owner's word so far: the check itself may still be done. */
  readonly owner: boolean;
  /** A cause that the search leaves out was mended since, and takes part in what was found. */
  readonly stale: boolean;
};

/** A place in the search. Weights are chances of set and way together: they sum to the way's. */
export type SearchState = {
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

const repairedBefore = (tables: SearchTables, at: number): number =>
  tables.causes.reduce(
    (mask, cause, place) =>
      (tables.input.repairedAt[cause] ?? Infinity) < at ? mask | (1 << place) : mask,
    0,
  );

/** Whether a cause that the short list does not have was mended after a finding of this group, and takes part in it. */
function staleUnseen({ input, causes }: SearchTables, { group, at }: Observation): boolean {
  const { model, repairedAt } = input;
  const kin = model.checks.filter((check) => check.group === group);
  return model.causes.some((_, cause) => {
    const mendedAt = repairedAt[cause] ?? Infinity;
    return (
      mendedAt >= at &&
      mendedAt < Infinity &&
      !causes.includes(cause) &&
      kin.some(({ links }) => links[cause] !== undefined)
    );
  });
}

/** Where the job stands now, with the weights of the fault sets. */
function startState(tables: SearchTables, weights: readonly number[]): SearchState {
  const { input } = tables;
  const last: (Last | undefined)[] = input.model.checks.map(() => undefined);
  const owners: Observation | undefined = input.evidenceInOrder[0];
  for (const found of input.evidence) {
    const { group, lo, hi, at } = found;
    const owner =
      group === owners?.group &&
      !input.evidenceInOrder.some((one, i) => i > 0 && one.group === group);
    const stale = staleUnseen(tables, found);
    last[group] = { lo, hi, repaired: repairedBefore(tables, at), owner, stale };
  }
  const repaired = repairedBefore(tables, Infinity);
  const start = Float64Array.from(weights);
  const all = sum(start);
  return {
    weights: start.map((weight) => weight / all),
    mass: 1,
    left: tables.sets.map((set) => set & ~repaired),
    repaired,
    opened: tables.costs.opened,
    standing: tables.costs.standing,
    last,
  };
}

/** Where the job stands now on a list of fault sets over some of its causes. */
export function startSearch(
  input: ReasoningInput,
  causes: readonly number[],
  sets: readonly FaultSet[],
) {
  const tables = new SearchTables(input, causes, sets);
  const chances = sets.map(({ chance }) => chance);
  return { tables, at: startState(tables, chances) };
}

/** Chance of at most `result` now where the check was found at `last` before. */
function atMostAgain(
  tables: SearchTables,
  check: number,
  sets: { was: number; now: number },
  last: Last,
) {
  const offset = tables.offsets[check] ?? 0;
  const now = tables.row(sets.now);
  const mended = tables.row(sets.was & ~sets.now);
  const background = tables.row(0);
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

/** Whether a check can still show something new. */
export function isUntold(tables: SearchTables, at: SearchState, check: number): boolean {
  const last = at.last[tables.groups[check] ?? check];
  if (last === undefined || (last.owner && last.hi > last.lo)) return true;
  return last.lo > 0 && mendedSince(tables, at, check, last);
}

/** Whether a check may be done here and can still show something new. */
export const canTell = (tables: SearchTables, at: SearchState, check: number): boolean =>
  isUntold(tables, at, check) &&
  (tables.input.model.checks[check]?.gates ?? []).every((gate) => isOpen(tables, at, gate));

/** Whether a gate's check has shown what it must, and nothing was mended since that it shows. */
export function isOpen(tables: SearchTables, at: SearchState, gate: Gate): boolean {
  const found = at.last[tables.groups[gate.check] ?? gate.check];
  if (found === undefined) return false;
  if (found.hi > 0 && mendedSince(tables, at, gate.check, found)) return false;
  for (let result = found.lo; result <= found.hi; result += 1)
    if (!gate.results.includes(result)) return false;
  return true;
}

const mendedSince = (tables: SearchTables, at: SearchState, check: number, last: Last): boolean =>
  last.stale || (at.repaired & ~last.repaired & (tables.linked[check] ?? 0)) !== 0;

/** Whether everything is shown that must be before this cause is mended. */
export const mayMend = (tables: SearchTables, at: SearchState, place: number): boolean =>
  entryOf(tables.input.model.causes, entryOf(tables.causes, place)).gates.every((gate) =>
    isOpen(tables, at, gate),
  );

/** By result: the weights of the fault sets that go on with it; in arrays of the caller's, if it has some. */
export function split(
  tables: SearchTables,
  at: SearchState,
  check: number,
  parts: readonly Float64Array[] = emptyParts(tables, check),
): readonly Float64Array[] {
  const last = at.last[wholeAt(tables.groups, check)];
  for (const part of parts) part.fill(0);
  for (let index = 0; index < at.weights.length; index += 1) {
    const weight = realAt(at.weights, index);
    if (weight === 0) continue;
    const now = wholeAt(at.left, index);
    const was = wholeAt(tables.sets, index) & ~(last?.repaired ?? 0);
    const again = last && atMostAgain(tables, check, { was, now }, last);
    const row = tables.row(now);
    let [below, place] = [0, entryOf(tables.offsets, check)];
    for (let result = 0; result < parts.length; result += 1, place += 1) {
      const upTo = again === undefined ? realAt(row, place) : again(result);
      if (upTo > below) entryOf(parts, result)[index] = weight * (upTo - below);
      below = upTo;
    }
  }
  return parts;
}

/** Arrays for the parts of a check, one a result. */
export function emptyParts(tables: SearchTables, check: number): Float64Array[] {
  const parts: Float64Array[] = [];
  const results = tables.input.model.checks[check]?.results.length ?? 0;
  for (let result = 0; result < results; result += 1)
    parts.push(new Float64Array(tables.sets.length));
  return parts;
}
export function afterCheck(
  tables: SearchTables,
  at: SearchState,
  check: number,
  shown: { readonly result: number; readonly weights: Float64Array },
): SearchState {
  const { result, weights } = shown;
  const last = { lo: result, hi: result, repaired: at.repaired, owner: false, stale: false };
  return {
    ...at,
    weights,
    mass: sum(weights),
    opened: at.opened | (tables.costs.masks[check] ?? 0),
    standing: tables.costs.standingAfter(check, at.standing),
    last: at.last.with(tables.groups[check] ?? check, last),
  };
}

/** A cause of the short list mended, and the proof showed the complaint still there. */
export function afterFailedProof(
  tables: SearchTables,
  at: SearchState,
  place: number,
): SearchState {
  const bit = 1 << place;
  const weights = at.weights.slice();
  const left = at.left.slice();
  for (let index = 0; index < left.length; index += 1) {
    const set = left[index] ?? 0;
    if ((set & bit) === 0) continue;
    weights[index] = (weights[index] ?? 0) * (1 - tables.gain(set, place));
    left[index] = set & ~bit;
  }
  const step = tables.costs.repair(tables.causes[place] ?? 0);
  const group = tables.groups[tables.input.model.complaint] ?? 0;
  const hi = at.last[group]?.hi ?? 1;
  const repaired = at.repaired | bit;
  return {
    weights,
    mass: sum(weights),
    left,
    repaired,
    opened: at.opened | (tables.costs.masks[step] ?? 0),
    standing: tables.costs.standingAfter(step, at.standing),
    last: at.last.with(group, { lo: 1, hi, repaired, owner: false, stale: false }),
  };
}
