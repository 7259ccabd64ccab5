import { at as entry } from '../../at.ts';
import { heldBy } from './condemning.ts';
import { chancesIn } from './explain.ts';
import { LookAhead } from './look-ahead.ts';
import type { ScoredCheck } from './look-ahead.ts';
import { afterCheck, afterFailedProof, mayMend } from './search-state.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

/** A step in the tables of a search: a check with what it would show, or a cause of the short list. */
export type Step = { readonly check: ScoredCheck } | { readonly place: number };

/** Ways less likely than this are mended to their end without looking any more. */
const unlikely = 0.004;

/**
 * What a job takes from a place when the advice is followed one step at a time: every result of
 * every step is followed, on all fault sets at once. Two first steps are compared with the same
 * continuation behind both, so that their difference is what the walk saves.
 */
export class Continuation {
  readonly #tables: SearchTables;
  readonly #ahead: LookAhead;
  readonly #leftOut: ReadonlySet<number>;

  constructor(tables: SearchTables, leftOut: ReadonlySet<number>) {
    this.#tables = tables;
    this.#ahead = new LookAhead(tables);
    this.#leftOut = leftOut;
  }

  /** Expected minutes of a step and all that follows it, times the mass; gives way now and then. */
  *after(at: SearchState, step: Step): Generator<undefined, number> {
    const { costs, causes } = this.#tables;
    if ('place' in step) {
      const move = costs.repair(entry(causes, step.place));
      const minutes = at.mass * costs.minutes(move, at.opened, at.standing);
      return minutes + (yield* this.#from(afterFailedProof(this.#tables, at, step.place)));
    }
    const { check, parts } = step.check;
    let minutes = at.mass * costs.minutes(check, at.opened, at.standing);
    for (const [result, weights] of parts.entries())
      minutes += yield* this.#from(afterCheck(this.#tables, at, check, { result, weights }));
    return minutes;
  }

  *#from(at: SearchState): Generator<undefined, number> {
    if (at.mass <= unlikely) return this.#ahead.mendOnly(at).work;
    yield undefined;
    const step = this.#choose(at);
    return step === undefined ? this.#ahead.mendOnly(at).work : yield* this.after(at, step);
  }

  /** The check of least cost, the blocks of branches walked to their end. */
  #bestCheck(at: SearchState): ScoredCheck | undefined {
    const cheap = this.#ahead.cheapest(at, { leftOut: this.#leftOut });
    const probes = this.#ahead.probes(at).filter(({ check }) => !this.#leftOut.has(check));
    return [...(cheap === undefined ? [] : [this.#ahead.scoreCheck(at, cheap.check)]), ...probes]
      .toSorted((one, other) => one.cost - other.cost)
      .at(0);
  }

  /** The one-step advice: the best check, or the best repair that nothing holds back. */
  #choose(at: SearchState): Step | undefined {
    const leftOut = this.#leftOut;
    const best = this.#bestCheck(at);
    const check = best && { check: best };
    const repairs = this.#ahead
      .scoreRepairs(at, best?.cost)
      .filter(({ place }) => mayMend(this.#tables, at, place))
      .toSorted((one, other) => one.cost - other.cost);
    if (repairs.length === 0) return check;
    const scored = this.#ahead.scoreChecks(at).filter((one) => !leftOut.has(one.check));
    const chances = chancesIn(this.#tables, at.weights, at);
    const free = repairs.find(({ place }) => {
      const cause = { place, chance: entry(chances, place) };
      return heldBy(this.#tables, at, cause, { scored }) === undefined;
    });
    return free === undefined ? check : { place: free.place };
  }
}
