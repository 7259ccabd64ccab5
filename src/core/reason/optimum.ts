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

const keyOf = (at: Position): string =>
  [
    at.repaired,
    at.opened,
    at.standing,
    ...at.last.map((last) => (last === undefined ? '' : `${last.lo}-${last.hi}-${last.repaired}`)),
  ].join(' ');

/** By set of causes: the least that somebody who sees through metal must spend on it. */
function clairvoyant(space: Space): Float64Array {
  const { causes, checks, complaint } = space.given.model;
  const proof = checks[complaint]?.minutes ?? 0;
  const one = space.causes.map(
    (cause) => (causes[cause]?.minutes ?? 0) + proof * space.given.tries,
  );
  const least = new Float64Array(space.silent.length);
  for (let set = 1; set < least.length; set += 1) {
    const showing = 1 - (space.silent[set] ?? 1);
    for (const [place, minutes] of one.entries()) {
      const alone = 1 - (space.silent[1 << place] ?? 1);
      if ((set & (1 << place)) !== 0) least[set] = (least[set] ?? 0) + (minutes * alone) / showing;
    }
  }
  return least;
}

/** Least expected minutes to a proven repair, by branch and bound over every order of steps. */
export class Optimum {
  readonly #space: Space;
  readonly #ahead: LookAhead;
  readonly #least: Float64Array;
  readonly #known = new Map<string, number>();

  constructor(space: Space) {
    this.#space = space;
    this.#ahead = new LookAhead(space);
    this.#least = clairvoyant(space);
  }

  get placesVisited(): number {
    return this.#known.size;
  }

  #leastOf(at: Position): number {
    return at.left.reduce(
      (all, set, index) => all + (at.weights[index] ?? 0) * (this.#least[set] ?? 0),
      0,
    );
  }

  /** Expected minutes from here, times the mass. */
  minutes(at: Position): number {
    if (at.mass <= negligible) return 0;
    const key = keyOf(at);
    const known = this.#known.get(key);
    if (known !== undefined) return known * at.mass;
    const scored = this.#ahead.scoreChecks(at, false);
    let best = Math.min(this.#ahead.mendOnly(at).minutes, scored[0]?.minutes ?? Infinity);
    for (const { check, parts } of scored)
      best = Math.min(best, this.#check(at, check, parts, best));
    for (const [place, cause] of this.#space.causes.entries()) {
      if ((at.repaired & (1 << place)) !== 0) continue;
      const step = this.#space.costs.repair(cause);
      const spent = at.mass * this.#space.costs.minutes(step, at.opened, at.standing);
      const next = afterFailedProof(this.#space, at, place);
      if (spent + this.#leastOf(next) < best) best = Math.min(best, spent + this.minutes(next));
    }
    this.#known.set(key, best / at.mass);
    return best;
  }

  #check(at: Position, check: number, parts: readonly Float64Array[], bound: number): number {
    const places = parts.map((weights, result) =>
      afterCheck(this.#space, at, check, { result, weights }),
    );
    let minutes = at.mass * this.#space.costs.minutes(check, at.opened, at.standing);
    minutes += places.reduce((all, next) => all + this.#leastOf(next), 0);
    for (const next of places) {
      if (minutes >= bound) return Infinity;
      minutes += this.minutes(next) - this.#leastOf(next);
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
