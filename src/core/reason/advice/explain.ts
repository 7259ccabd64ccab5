import { at as entry } from '../../at.ts';
import type { ScoredCheck } from './look-ahead.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

/** What one result of a check would leave behind. */
type Outcome = {
  readonly result: string;
  readonly chance: number;
  /** The likeliest cause after it, and its chance then. */
  readonly suspect: string;
  readonly suspectChance: number;
};

/** The pieces of a sentence about a step. */
export type Why =
  | {
      readonly kind: 'check';
      readonly outcomes: readonly Outcome[];
      /** Chance that its result leaves one cause nearly sure. */
      readonly settles: number;
    }
  | {
      readonly kind: 'repair';
      /** Chance that the cause is there, and that mending it alone ends the complaint. */
      readonly there: number;
      readonly cures: number;
    }
  | { readonly kind: 'proof'; readonly cures: number }
  /** Everything else waits until it shows otherwise. */
  | { readonly kind: 'again' };

/** A cause this likely counts as found. */
export const settledFrom = 0.8;

/** Chance of each cause of the short list in a share of the fault sets. */
export function chancesIn(tables: SearchTables, weights: Float64Array, at: SearchState): number[] {
  const chances = tables.causes.map(() => 0);
  let all = 0;
  weights.forEach((weight, index) => {
    all += weight;
    const set = at.left[index] ?? 0;
    for (let place = 0; place < chances.length; place += 1)
      if ((set & (1 << place)) !== 0) chances[place] = entry(chances, place) + weight;
  });
  return chances.map((chance) => (all > 0 ? chance / all : 0));
}

export function whyCheck(tables: SearchTables, at: SearchState, scored: ScoredCheck): Why {
  const { model } = tables.input;
  const { results } = entry(model.checks, scored.check);
  const outcomes = scored.parts.map((part, result): Outcome => {
    const chances = chancesIn(tables, part, at);
    const suspectChance = Math.max(0, ...chances);
    const cause = tables.causes[chances.indexOf(suspectChance)];
    const chance = part.reduce((all, weight) => all + weight, 0) / at.mass;
    return {
      result: entry(results, result),
      chance,
      // Once all of the short list is mended, nobody is left to suspect.
      suspect: cause === undefined ? '' : entry(model.causes, cause).id,
      suspectChance,
    };
  });
  const settles = outcomes
    .filter(({ suspectChance }) => suspectChance >= settledFrom)
    .reduce((all, { chance }) => all + chance, 0);
  return { kind: 'check', outcomes, settles };
}

export function whyRepair(tables: SearchTables, at: SearchState, place: number): Why {
  const there = entry(chancesIn(tables, at.weights, at), place);
  let cures = 0;
  at.weights.forEach((weight, index) => {
    const set = at.left[index] ?? 0;
    if ((set & (1 << place)) !== 0) cures += weight * tables.gain(set, place);
  });
  return { kind: 'repair', there, cures: cures / at.mass };
}
