import type { ReasoningInput } from '../../src/core/reason/belief/evidence.ts';
import { LookAhead } from '../../src/core/reason/advice/look-ahead.ts';
import {
  afterCheck,
  afterFailedProof,
  canTell,
  startSearch,
} from '../../src/core/reason/advice/search-state.ts';
import type { SearchState } from '../../src/core/reason/advice/search-state.ts';
import { everySet } from '../../src/core/reason/belief/fault-sets.ts';
import type { SearchTables } from '../../src/core/reason/advice/search-tables.ts';

/** Exact answers are for benches and tests: the work grows too fast for anything larger. */
const mostCauses = 7;
/** Ways less likely than this are only mended to their end: far below the minutes compared. */
export const negligible = 1e-9;

/** Every possible fault set with its weight, whatever its size. */
export function wholeTables(input: ReasoningInput): {
  readonly tables: SearchTables;
  readonly at: SearchState;
} {
  const { causes } = input.model;
  if (causes.length > mostCauses)
    throw new RangeError(`${causes.length} causes; an exact optimum is for 1 to ${mostCauses}`);
  return startSearch(
    input,
    causes.map((_, index) => index),
    everySet(input),
  );
}

/**
 * What was found so far, by group of checks. Earlier findings of a check that was taken again
 * belong to it: they tell of the causes mended since.
 */
type History = readonly string[];

const keyOf = (at: SearchState, history: History): string =>
  [at.repaired, at.opened, at.standing, ...history].join(' ');

/**
 * By set of causes: the least that somebody who sees through metal must spend on it. Exactly
 * those that show the complaint are mended, each with its proof; standings change for nothing.
 */
function clairvoyant(tables: SearchTables, opened: number): Float64Array {
  const { causes, checks, complaint } = tables.input.model;
  const { costs, silent } = tables;
  const proof = (checks[complaint]?.minutes ?? 0) * tables.input.tries;
  const own = tables.causes.map((cause) => (causes[cause]?.minutes ?? 0) + proof);
  const masks = tables.causes.map((cause) => costs.masks[costs.repair(cause)] ?? 0);
  const members = (set: number): number[] =>
    own.flatMap((_, place) => ((set & (1 << place)) === 0 ? [] : [place]));
  const mending = Float64Array.from(silent, (_, set) => {
    const access = members(set).reduce((mask, place) => mask | (masks[place] ?? 0), 0);
    return members(set).reduce(
      (all, place) => all + (own[place] ?? 0),
      costs.unopened(access, opened),
    );
  });
  return silent.map((whole, set) => {
    let least = 0;
    for (let showing = set; showing !== 0 && whole < 1; showing = (showing - 1) & set) {
      const chance = members(showing).reduce(
        (all, place) => all * (1 - (silent[1 << place] ?? 1)),
        silent[set & ~showing] ?? 1,
      );
      least += (chance * (mending[showing] ?? 0)) / (1 - whole);
    }
    return least;
  });
}

/** One next step, with the places it can lead to. */
type Way = {
  /** Minutes when only mending follows. */
  readonly soon: number;
  readonly spent: number;
  readonly next: readonly {
    readonly at: SearchState;
    readonly told?: { readonly group: number; readonly word: string };
  }[];
};

/** Least expected minutes to a proven repair, by branch and bound over every order of steps. */
class Optimum {
  readonly #tables: SearchTables;
  readonly #ahead: LookAhead;
  readonly #least = new Map<number, Float64Array>();
  readonly #known = new Map<string, number>();

  readonly #mostPlaces: number;
  /** Whether the places ran out: the minutes are then no optimum. */
  gaveUp = false;

  constructor(tables: SearchTables, mostPlaces = Infinity) {
    this.#tables = tables;
    this.#ahead = new LookAhead(tables);
    this.#mostPlaces = mostPlaces;
  }

  get placesVisited(): number {
    return this.#known.size;
  }

  #leastTable(opened: number): Float64Array {
    const known = this.#least.get(opened) ?? clairvoyant(this.#tables, opened);
    this.#least.set(opened, known);
    return known;
  }

  #leastOf(at: SearchState): number {
    const least = this.#leastTable(at.opened);
    let all = 0;
    for (let index = 0; index < at.left.length; index += 1)
      all += (at.weights[index] ?? 0) * (least[at.left[index] ?? 0] ?? 0);
    return all;
  }

  /** Expected minutes from here, times the mass. */
  minutes(at: SearchState, history: History = at.last.map(() => '')): number {
    if (at.mass <= negligible) return this.#ahead.mendOnly(at).cost;
    const key = keyOf(at, history);
    const known = this.#known.get(key);
    if (known !== undefined) return known * at.mass;
    if (this.#known.size >= this.#mostPlaces) {
      this.gaveUp = true;
      return 0;
    }
    const ways = [...this.#checks(at), ...this.#repairs(at)].toSorted(
      (one, other) => one.soon - other.soon,
    );
    let best = Math.min(this.#ahead.mendOnly(at).cost, ways[0]?.soon ?? Infinity);
    for (const way of ways) best = Math.min(best, this.#follow(way, history, best));
    this.#known.set(key, best / at.mass);
    return best;
  }

  /** A closer bound: the first step from here is a check, or a repair that may be for nothing. */
  #leastSoon(at: SearchState): number {
    if (at.mass === 0) return 0;
    const { costs, causes, sets } = this.#tables;
    const least = this.#leastOf(at);
    let best = least + at.mass * this.#cheapestCheck(at);
    for (let place = 0; place < causes.length; place += 1) {
      const bit = 1 << place;
      if ((at.repaired & bit) !== 0) continue;
      const step = costs.repair(causes[place] ?? 0);
      const after = this.#leastTable(at.opened | (costs.masks[step] ?? 0));
      let minutes = at.mass * costs.cost(step, at.opened, at.standing);
      for (let index = 0; index < sets.length; index += 1) {
        const left = at.left[index] ?? 0;
        const weight = at.weights[index] ?? 0;
        const open = (left & bit) === 0 ? 1 : 1 - this.#tables.gain(left, place);
        minutes += weight * open * (after[left & ~bit] ?? 0);
      }
      best = Math.min(best, minutes);
    }
    return Math.max(best, least);
  }

  #cheapestCheck(at: SearchState): number {
    const { costs, input } = this.#tables;
    let least = Infinity;
    for (let check = 0; check < input.model.checks.length; check += 1)
      if (canTell(this.#tables, at, check))
        least = Math.min(least, costs.cost(check, at.opened, at.standing));
    return least;
  }

  #checks(at: SearchState): Way[] {
    const { costs, groups, linked } = this.#tables;
    return this.#ahead.scoreChecks(at, 'every').map(({ check, parts, cost }) => ({
      soon: cost,
      spent: at.mass * costs.cost(check, at.opened, at.standing),
      next: parts.map((weights, result) => ({
        at: afterCheck(this.#tables, at, check, { result, weights }),
        told: {
          group: groups[check] ?? check,
          word: `${result}/${at.repaired & (linked[check] ?? 0)},`,
        },
      })),
    }));
  }

  #repairs(at: SearchState): Way[] {
    const { costs, causes } = this.#tables;
    return causes.flatMap((cause, place) => {
      if ((at.repaired & (1 << place)) !== 0) return [];
      const spent = at.mass * costs.cost(costs.repair(cause), at.opened, at.standing);
      const next = afterFailedProof(this.#tables, at, place);
      if (next.mass === at.mass) return [];
      return [{ soon: spent + this.#ahead.mendOnly(next).cost, spent, next: [{ at: next }] }];
    });
  }

  /** Minutes of one way, or Infinity as soon as it cannot beat the bound. */
  #follow(way: Way, history: History, bound: number): number {
    let minutes = way.spent + way.next.reduce((all, next) => all + this.#leastOf(next.at), 0);
    if (minutes >= bound) return Infinity;
    const least = way.next.map((next) => this.#leastSoon(next.at));
    minutes = way.spent + least.reduce((all, one) => all + one, 0);
    for (const [index, next] of way.next.entries()) {
      if (minutes >= bound) return Infinity;
      const { told } = next;
      const then =
        told === undefined
          ? history
          : history.with(told.group, `${history[told.group]}${told.word}`);
      minutes += this.minutes(next.at, then) - (least[index] ?? 0);
    }
    return minutes;
  }
}

/** Exact expected minutes of the best possible way; undefined where that takes too many places. */
export function optimalMinutes(input: ReasoningInput, mostPlaces = Infinity): number | undefined {
  const { tables, at } = wholeTables(input);
  const optimum = new Optimum(tables, mostPlaces);
  const minutes = optimum.minutes(at);
  return optimum.gaveUp ? undefined : minutes;
}
