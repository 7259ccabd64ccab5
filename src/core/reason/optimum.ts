import type { Case } from './case.ts';
import { compile } from './compile.ts';
import { LookAhead } from './look-ahead.ts';
import type { Move } from './minutes.ts';
import { afterCheck, afterFailedProof, canTell, startPosition } from './position.ts';
import type { Position } from './position.ts';
import { SetWeigher } from './sets.ts';
import { Space } from './space.ts';

/** Exact answers are for benches and tests: the work grows too fast for anything larger. */
const mostCauses = 7;
/** Ways less likely than this are left out: far below the minutes that are compared. */
const negligible = 1e-12;

/** Every possible fault set with its weight, whatever its size. */
export function wholeSpace(given: Case): { readonly space: Space; readonly at: Position } {
  const { causes } = given.model;
  if (causes.length > mostCauses)
    throw new RangeError(`${causes.length} causes; an exact optimum is for 1 to ${mostCauses}`);
  const weigher = new SetWeigher(given, compile(given));
  const sets = Array.from({ length: 2 ** causes.length }, (_, mask) => {
    const present = causes.flatMap((_cause, index) => ((mask & (1 << index)) === 0 ? [] : [index]));
    return { causes: present, chance: Math.exp(weigher.log(present)) };
  }).filter(({ chance }) => chance > 0);
  const space = new Space(
    given,
    causes.map((_, index) => index),
    sets,
  );
  return {
    space,
    at: startPosition(
      space,
      sets.map(({ chance }) => chance),
    ),
  };
}

/**
 * What was found so far, by group of checks. Earlier findings of a check that was taken again
 * belong to it: they tell of the causes mended since.
 */
type History = readonly string[];

const keyOf = (at: Position, history: History): string =>
  [at.repaired, at.opened, at.standing, ...history].join(' ');

/**
 * By set of causes: the least that somebody who sees through metal must spend on it. Exactly
 * those that show the complaint are mended, each with its proof; standings change for nothing.
 */
function clairvoyant(space: Space, opened: number): Float64Array {
  const { causes, checks, complaint } = space.given.model;
  const { costs, silent } = space;
  const proof = (checks[complaint]?.minutes ?? 0) * space.given.tries;
  const own = space.causes.map((cause) => (causes[cause]?.minutes ?? 0) + proof);
  const masks = space.causes.map((cause) => costs.masks[costs.repair(cause)] ?? 0);
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
    readonly at: Position;
    readonly told?: { readonly group: number; readonly word: string };
  }[];
};

/** Least expected minutes to a proven repair, by branch and bound over every order of steps. */
export class Optimum {
  readonly #space: Space;
  readonly #ahead: LookAhead;
  readonly #least = new Map<number, Float64Array>();
  readonly #known = new Map<string, number>();

  constructor(space: Space) {
    this.#space = space;
    this.#ahead = new LookAhead(space);
  }

  get placesVisited(): number {
    return this.#known.size;
  }

  #leastOf(at: Position): number {
    const least = this.#least.get(at.opened) ?? clairvoyant(this.#space, at.opened);
    this.#least.set(at.opened, least);
    let all = 0;
    for (let index = 0; index < at.left.length; index += 1)
      all += (at.weights[index] ?? 0) * (least[at.left[index] ?? 0] ?? 0);
    return all;
  }

  /** Expected minutes from here, times the mass. */
  minutes(at: Position, history: History = at.last.map(() => '')): number {
    if (at.mass <= negligible) return 0;
    const key = keyOf(at, history);
    const known = this.#known.get(key);
    if (known !== undefined) return known * at.mass;
    const ways = [...this.#checks(at), ...this.#repairs(at)].toSorted(
      (one, other) => one.soon - other.soon,
    );
    let best = Math.min(this.#ahead.mendOnly(at).minutes, ways[0]?.soon ?? Infinity);
    for (const way of ways) best = Math.min(best, this.#follow(way, history, best));
    this.#known.set(key, best / at.mass);
    return best;
  }

  #checks(at: Position): Way[] {
    const { costs, groups } = this.#space;
    return this.#ahead.scoreChecks(at, false).map(({ check, parts, minutes }) => ({
      soon: minutes,
      spent: at.mass * costs.minutes(check, at.opened, at.standing),
      next: parts.map((weights, result) => ({
        at: afterCheck(this.#space, at, check, { result, weights }),
        told: { group: groups[check] ?? check, word: `${result}/${at.repaired},` },
      })),
    }));
  }

  #repairs(at: Position): Way[] {
    const { costs, causes } = this.#space;
    return causes.flatMap((cause, place) => {
      if ((at.repaired & (1 << place)) !== 0) return [];
      const spent = at.mass * costs.minutes(costs.repair(cause), at.opened, at.standing);
      const next = afterFailedProof(this.#space, at, place);
      if (next.mass === at.mass) return [];
      return [{ soon: spent + this.#ahead.mendOnly(next).minutes, spent, next: [{ at: next }] }];
    });
  }

  /** Minutes of one way, or Infinity as soon as it cannot beat the bound. */
  #follow(way: Way, history: History, bound: number): number {
    let minutes = way.spent + way.next.reduce((all, next) => all + this.#leastOf(next.at), 0);
    for (const next of way.next) {
      if (minutes >= bound) return Infinity;
      const { told } = next;
      const then =
        told === undefined
          ? history
          : history.with(told.group, `${history[told.group]}${told.word}`);
      minutes += this.minutes(next.at, then) - this.#leastOf(next.at);
    }
    return minutes;
  }
}

/** Exact expected minutes of the best possible way. */
export function optimalMinutes(given: Case): number {
  const { space, at } = wholeSpace(given);
  return new Optimum(space).minutes(at);
}

/** A place on a policy's way: the case as the policy sees it. */
export type Told = {
  readonly findings: readonly { check: number; result: number; at: number }[];
  readonly repairs: readonly number[];
};
export type Policy = (told: Told, at: Position, space: Space) => Move;

/** Exact expected minutes of a policy: every result of every step it takes is followed. */
export function policyMinutes(given: Case, policy: Policy): number {
  const { space, at: start } = wholeSpace(given);
  const { costs } = space;
  const follow = (told: Told, at: Position): number => {
    if (at.mass <= negligible) return 0;
    const move = policy(told, at, space);
    if (move.do === 'repair') {
      if ((at.repaired & (1 << move.index)) !== 0)
        throw new RangeError(`cause ${move.index} is mended already`);
      const spent = at.mass * costs.minutes(costs.repair(move.index), at.opened, at.standing);
      const next = { ...told, repairs: [...told.repairs, move.index] };
      return spent + follow(next, afterFailedProof(space, at, move.index));
    }
    if (!canTell(space, at, move.index))
      throw new RangeError(`check ${move.index} can tell nothing here`);
    const { parts } = new LookAhead(space).scoreCheck(at, move.index);
    return parts.reduce(
      (all, weights, result) => {
        const finding = { check: move.index, result, at: told.repairs.length };
        const next = { ...told, findings: [...told.findings, finding] };
        return all + follow(next, afterCheck(space, at, move.index, { result, weights }));
      },
      at.mass * costs.minutes(move.index, at.opened, at.standing),
    );
  };
  return follow({ findings: [], repairs: [] }, start);
}
