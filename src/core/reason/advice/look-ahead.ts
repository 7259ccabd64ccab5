import { sum } from '../../sum.ts';
import { at as entry } from '../../at.ts';
import { afterCheck, afterFailedProof, canTell, split } from './search-state.ts';
import type { SearchState } from './search-state.ts';
import { RepairOnly } from './repair-only.ts';
import type { SearchTables } from './search-tables.ts';

/** How many checks and repairs are followed further at every place. */
export type Beam = { readonly checks: number; readonly repairs: number };

/** A check with one result this likely tells nothing. */
export const nearlyCertain = 0.999;
/** Ways less likely than this are not followed. */
const negligible = 1e-7;
/** Checks followed, over and above the beam, because another check waits for them. */
const openersFollowed = 2;

export type ScoredCheck = {
  readonly check: number;
  /** Expected minutes with this check now and mending only afterwards, times the mass. */
  readonly minutes: number;
  readonly parts: readonly Float64Array[];
  readonly certain: boolean;
};

/** Expected minutes to a proven repair, searched ahead with the repair-only plan at the leaves. */
export class LookAhead {
  readonly #tables: SearchTables;
  readonly #plan: RepairOnly;
  readonly #openers: ReadonlySet<number>;

  constructor(tables: SearchTables) {
    this.#tables = tables;
    this.#plan = new RepairOnly(tables);
    const { checks } = tables.input.model;
    this.#openers = new Set(checks.flatMap(({ after }) => after.map(({ check }) => check)));
  }

  /** Whether another check waits for what this one shows. */
  opens(check: number): boolean {
    return this.#openers.has(check);
  }

  /** Minutes of mending only, and the cause it begins with. */
  mendOnly(at: SearchState): { readonly minutes: number; readonly first: number } {
    const minutes = this.#plan.minutes(at.weights, at);
    return { minutes, first: this.#plan.first };
  }

  scoreCheck(at: SearchState, check: number): ScoredCheck {
    const { costs } = this.#tables;
    const parts = split(this.#tables, at, check);
    const opened = at.opened | (costs.masks[check] ?? 0);
    const from = { opened, standing: costs.standingAfter(check, at.standing) };
    let minutes = at.mass * costs.minutes(check, at.opened, at.standing);
    let most = 0;
    for (const part of parts) {
      const mass = sum(part);
      most = Math.max(most, mass);
      if (mass > 0) minutes += this.#plan.minutes(part, at, from);
    }
    return { check, minutes, parts, certain: most >= nearlyCertain * at.mass };
  }

  /** Checks that can tell something here, best first; ties in the tree's order. */
  scoreChecks(at: SearchState, dropCertain = true): ScoredCheck[] {
    return this.#tables.input.model.checks
      .flatMap((_, check) => (canTell(this.#tables, at, check) ? [this.scoreCheck(at, check)] : []))
      .filter(({ check, certain }) => !dropCertain || !certain || this.#openers.has(check))
      .toSorted((one, other) => one.minutes - other.minutes);
  }

  /** Repairs worth following, as places in the short list: by gain per minute, then the plan's own. */
  repairs(at: SearchState, most: number, first: number): number[] {
    const { costs, causes } = this.#tables;
    const gains = causes.map((cause, place) => {
      const bit = 1 << place;
      let gain = 0;
      at.left.forEach((set, index) => {
        if ((set & bit) !== 0) gain += (at.weights[index] ?? 0) * this.#tables.gain(set, place);
      });
      const minutes = costs.minutes(costs.repair(cause), at.opened, at.standing);
      return { place, rate: gain / Math.max(minutes, 1e-9) };
    });
    const best = gains
      .filter(({ rate }) => rate > 0)
      .toSorted((one, other) => other.rate - one.rate)
      .slice(0, most)
      .map(({ place }) => place);
    return first < 0 || best.includes(first) ? best : [...best, first];
  }

  /** Expected minutes of a check and what follows it, times the mass; Infinity from `bound` on. */
  *check(
    at: SearchState,
    scored: ScoredCheck,
    depth: number,
    how: { readonly beam: Beam; readonly bound: number },
  ): Generator<undefined, number> {
    const { check, parts } = scored;
    let minutes = at.mass * this.#tables.costs.minutes(check, at.opened, at.standing);
    for (const [result, weights] of parts.entries()) {
      const next = afterCheck(this.#tables, at, check, { result, weights });
      if (next.mass <= negligible) continue;
      minutes += yield* this.value(next, depth - 1, how.beam);
      if (minutes >= how.bound) return Infinity;
    }
    return minutes;
  }

  /** Expected minutes of mending one cause, its proof, and what follows a failed one. */
  *repair(at: SearchState, place: number, depth: number, beam: Beam): Generator<undefined, number> {
    const { costs, causes } = this.#tables;
    const step = costs.repair(entry(causes, place));
    const minutes = at.mass * costs.minutes(step, at.opened, at.standing);
    const next = afterFailedProof(this.#tables, at, place);
    return next.mass <= negligible ? minutes : minutes + (yield* this.value(next, depth - 1, beam));
  }

  /** Expected minutes from here, times the mass; gives way after every place looked at. */
  *value(at: SearchState, depth: number, beam: Beam): Generator<undefined, number> {
    const { minutes, first } = this.mendOnly(at);
    if (depth <= 0) return minutes;
    const scored = this.scoreChecks(at);
    yield undefined;
    let best = Math.min(minutes, scored[0]?.minutes ?? Infinity);
    if (depth === 1) return best;
    for (const one of this.followed(scored, beam))
      best = Math.min(best, yield* this.check(at, one, depth, { beam, bound: best }));
    for (const place of this.repairs(at, beam.repairs, first))
      best = Math.min(best, yield* this.repair(at, place, depth, beam));
    return best;
  }

  /** The best checks, and those that another one waits for. */
  followed(scored: readonly ScoredCheck[], beam: Beam): ScoredCheck[] {
    const openers = scored.slice(beam.checks).filter(({ check }) => this.#openers.has(check));
    return [...scored.slice(0, beam.checks), ...openers.slice(0, openersFollowed)];
  }
}
