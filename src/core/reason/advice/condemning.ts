import { at as entry, realAt, wholeAt } from '../../at.ts';
import { sum } from '../../sum.ts';
import { withFinding, type ReasoningInput } from '../belief/evidence.ts';
import { believe } from '../belief/posterior.ts';
import type { ScoredCheck } from './look-ahead.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

// Measured on fifteen trees: a rule this mild costs next to nothing and takes the swaps away that a
// master would laugh at.
/** Minutes of a check, opening up included, that nobody is too busy for. */
const short = 15;
/** A check is worth its minutes where it moves the cause by this much, in expectation. */
const telling = 0.1;

/** How far a check would move the chance of a cause of the short list, in expectation. */
function movement(at: SearchState, { parts }: ScoredCheck, place: number): number {
  const bit = 1 << place;
  const sets = [...at.left.keys()].filter((set) => (wholeAt(at.left, set) & bit) !== 0);
  const holding = (weights: Float64Array): number =>
    sets.reduce((all, set) => all + realAt(weights, set), 0);
  const now = holding(at.weights) / at.mass;
  const moved = parts.reduce((all, part) => all + Math.abs(holding(part) - sum(part) * now), 0);
  return moved / at.mass;
}

/** The same by the exact belief after each result of a check, on all fault sets. */
export function exactMovement(input: ReasoningInput, check: number, cause: number): number {
  const now = believe(input);
  if (now.kind === 'bad') return 0;
  const { group, results } = entry(input.model.checks, check);
  const before = entry(now.value.chances, cause);
  return results.reduce((all, _, result) => {
    const then = believe(withFinding(input, { check, group, lo: result, hi: result }));
    if (then.kind === 'bad') return all;
    const chance = Math.exp(then.value.logEvidence - now.value.logEvidence);
    return all + chance * Math.abs(entry(then.value.chances, cause) - before);
  }, 0);
}

/**
 * Evidence before parts: the short check that is still to be made before a cause is condemned, by
 * index; undefined where the cause is sure enough, where mending it is a trial that can be taken
 * back, or where no short check would tell.
 * @param cause its place in the short list, and how likely it is now
 * @param exact how far a check moves a cause by the exact belief; asked where the fault sets of the
 *   search leave it open
 */
export function heldBy(
  tables: SearchTables,
  at: SearchState,
  cause: { readonly place: number; readonly chance: number },
  {
    scored,
    exact,
  }: { readonly scored: readonly ScoredCheck[]; readonly exact?: typeof exactMovement },
): number | undefined {
  const { model, prudence } = tables.input;
  const index = entry(tables.causes, cause.place);
  const { trial, sureAt } = entry(model.causes, index);
  if (trial || cause.chance >= Math.max(prudence.sure, sureAt)) return undefined;
  return scored.find((one) => {
    if (tables.costs.minutes(one.check, at.opened, at.standing) > short) return false;
    const moved = movement(at, one, cause.place);
    if (moved >= telling || exact === undefined) return moved >= telling;
    return moved >= telling / 10 && exact(tables.input, one.check, index) >= telling;
  })?.check;
}
