import { sum } from '../../sum.ts';
import { at as entry } from '../../at.ts';
import {
  afterCheck,
  afterFailedProof,
  canTell,
  emptyParts,
  mayMend,
  split,
} from './search-state.ts';
import type { SearchState } from './search-state.ts';
import { BlockWalk, negligible } from './block-walk.ts';
import { RepairOnly } from './repair-only.ts';
import type { SearchTables } from './search-tables.ts';

/** How many checks and repairs are followed further at every place. */
export type Beam = { readonly checks: number; readonly repairs: number };

/** A check with one result this likely tells nothing. */
export const nearlyCertain = 0.999;
/** Checks followed, over and above the beam, because another check waits for them. */
const openersFollowed = 2;
/** Far below what any price rests on, far above what sums lose: nothing just below a bound is dropped. */
const hair = 1e-9;

/** How a step is followed: only a cost below the bound need be worked out to the end. */
type Following = { readonly beam: Beam; readonly bound: number };

export type ScoredCheck = {
  readonly check: number;
  /** Expected cost with this check now and mending only afterwards, or its block of branches first; times the mass. */
  readonly cost: number;
  readonly parts: readonly Float64Array[];
  readonly certain: boolean;
};

/** A cost that is worked out little by little. */
type Costing = Generator<undefined, number>;

/**
 * Expected cost to a proven repair, searched ahead with the repair-only plan at the leaves: minutes
 * of work, and the price of parts in minutes.
 */
export class LookAhead {
  readonly #tables: SearchTables;
  readonly #plan: RepairOnly;
  readonly #blocks: BlockWalk;
  readonly #openers: ReadonlySet<number>;
  /** By check: arrays for its parts where nobody keeps them. */
  readonly #scratch: (readonly Float64Array[])[] = [];
  /** All checks, what was best of late first: a good one soon rules the others out. */
  #promising: readonly number[];

  constructor(tables: SearchTables) {
    this.#tables = tables;
    this.#plan = new RepairOnly(tables);
    this.#blocks = new BlockWalk(tables, this.#plan);
    const { causes, checks } = tables.input.model;
    this.#openers = new Set(
      [...causes, ...checks].flatMap(({ gates }) => gates.map(({ check }) => check)),
    );
    this.#promising = [...checks.keys()];
  }

  /** Whether another step waits for what this one shows. */
  opens(check: number): boolean {
    return this.#openers.has(check);
  }

  /** Mending only: its cost, its minutes of work, and the cause it begins with. */
  mendOnly(at: SearchState): {
    readonly cost: number;
    readonly work: number;
    readonly first: number;
  } {
    const cost = this.#plan.cost(at.weights, at);
    return { cost, work: this.#plan.work, first: this.#plan.first };
  }

  /** Causes of the short list that are not mended, with the cost of mending each now, where it is below `bound`. */
  scoreRepairs(
    at: SearchState,
    bound = Infinity,
  ): { readonly place: number; readonly cost: number }[] {
    const { costs, causes } = this.#tables;
    return causes.flatMap((cause, place) => {
      if ((at.repaired & (1 << place)) !== 0) return [];
      const now = at.mass * costs.cost(costs.repair(cause), at.opened, at.standing);
      if (now >= bound) return [];
      const next = afterFailedProof(this.#tables, at, place);
      const later =
        next.mass <= negligible ? 0 : this.#plan.cost(next.weights, next, next, bound - now + hair);
      return now + later < bound ? [{ place, cost: now + later }] : [];
    });
  }

  scoreCheck(at: SearchState, check: number): ScoredCheck {
    const { costs } = this.#tables;
    const now = at.mass * costs.cost(check, at.opened, at.standing);
    const parts = split(this.#tables, at, check);
    const { cost, most } = this.#thenMend(at, check, { now, parts, bound: Infinity });
    const walked = this.#blocks.cost(at, check, parts);
    return { check, cost: walked ?? cost, parts, certain: most >= nearlyCertain * at.mass };
  }

  /** Cost with mending only after each result, and the mass of the likeliest; not added up beyond `bound`. */
  #thenMend(
    at: SearchState,
    check: number,
    { now, parts, bound }: { now: number; parts: ScoredCheck['parts']; bound: number },
  ): { readonly cost: number; readonly most: number } {
    const { costs } = this.#tables;
    const opened = at.opened | (costs.masks[check] ?? 0);
    const from = { opened, standing: costs.standingAfter(check, at.standing) };
    let cost = now;
    let most = 0;
    for (const part of parts) {
      if (cost >= bound) break;
      const mass = sum(part);
      most = Math.max(most, mass);
      if (mass > 0) cost += this.#plan.cost(part, at, from, bound - cost + hair);
    }
    return { cost, most };
  }

  /** Checks of blocks of branches that can tell something here. */
  probes(at: SearchState): ScoredCheck[] {
    return this.#blocks.checks.filter(this.#telling(at)).map((one) => this.scoreCheck(at, one));
  }

  /**
   * The check that costs least where mending follows it, found without working the others out to the
   * end; none where its cost is not below the bound.
   */
  cheapest(
    at: SearchState,
    { bound = Infinity, leftOut }: { bound?: number; leftOut?: ReadonlySet<number> } = {},
  ): { readonly check: number; readonly cost: number } | undefined {
    const tells = this.#telling(at);
    let [best, least] = [-1, bound];
    for (const check of this.#promising) {
      const now = at.mass * this.#tables.costs.cost(check, at.opened, at.standing);
      if (now > least || leftOut?.has(check) || !tells(check)) continue;
      const cost = this.#costBelow(at, check, { now, bound: least + hair });
      if (cost < least || (cost === least && check < best)) [best, least] = [check, cost];
    }
    if (best < 0) return undefined;
    this.#promising = [best, ...this.#promising.filter((check) => check !== best)];
    return { check: best, cost: least };
  }

  /** The cost of a check that tells something, as `scoreCheck` has it; Infinity from the bound on. */
  #costBelow(at: SearchState, check: number, { now, bound }: { now: number; bound: number }) {
    const scratch = (this.#scratch[check] ??= emptyParts(this.#tables, check));
    const parts = split(this.#tables, at, check, scratch);
    const { cost, most } = this.#thenMend(at, check, { now, parts, bound });
    const told = most < nearlyCertain * at.mass || this.#openers.has(check);
    return told && cost < bound ? cost : Infinity;
  }

  /** Whether a check can tell something here, of a cause that is still likely enough. */
  #telling(at: SearchState): (check: number) => boolean {
    let alive = 0;
    for (let set = 0; set < at.left.length; set += 1)
      if ((at.weights[set] ?? 0) > negligible * at.mass) alive |= at.left[set] ?? 0;
    return (check) =>
      (this.#openers.has(check) || ((this.#tables.tellsOf[check] ?? 0) & alive) !== 0) &&
      canTell(this.#tables, at, check);
  }

  /** Checks that can tell something here, best first; ties in the tree's order. One that tells of the unlisted cause alone tells next to nothing. */
  scoreChecks(at: SearchState, which: 'telling' | 'every' = 'telling'): ScoredCheck[] {
    const tells =
      which === 'every' ? (check: number) => canTell(this.#tables, at, check) : this.#telling(at);
    return this.#tables.input.model.checks
      .flatMap((_, check) => (tells(check) ? [this.scoreCheck(at, check)] : []))
      .filter(({ check, certain }) => which === 'every' || !certain || this.#openers.has(check))
      .toSorted((one, other) => one.cost - other.cost);
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
      const cost = costs.cost(costs.repair(cause), at.opened, at.standing);
      return { place, rate: gain / Math.max(cost, 1e-9) };
    });
    const best = gains
      .filter(({ place, rate }) => rate > 0 && mayMend(this.#tables, at, place))
      .toSorted((one, other) => other.rate - one.rate)
      .slice(0, most)
      .map(({ place }) => place);
    return first < 0 || best.includes(first) ? best : [...best, first];
  }

  /** Expected cost of a check and what follows it, times the mass; Infinity from the bound on. */
  *check(at: SearchState, scored: ScoredCheck, depth: number, { beam, bound }: Following): Costing {
    const { check, parts } = scored;
    let cost = at.mass * this.#tables.costs.cost(check, at.opened, at.standing);
    for (const [result, weights] of parts.entries()) {
      const next = afterCheck(this.#tables, at, check, { result, weights });
      if (next.mass <= negligible) continue;
      cost += yield* this.#value(next, depth - 1, { beam, bound: bound - cost + hair });
      if (cost >= bound) return Infinity;
    }
    return cost;
  }

  /** Expected cost of mending one cause, its proof, and what follows a failed one. */
  *repair(at: SearchState, place: number, depth: number, { beam, bound }: Following): Costing {
    const { costs, causes } = this.#tables;
    const step = costs.repair(entry(causes, place));
    const cost = at.mass * costs.cost(step, at.opened, at.standing);
    const next = afterFailedProof(this.#tables, at, place);
    if (next.mass <= negligible) return cost;
    return cost + (yield* this.#value(next, depth - 1, { beam, bound: bound - cost + hair }));
  }

  /**
   * Expected cost from here, times the mass, or some number from the bound on where it is not below
   * that; gives way after every place looked at.
   */
  *#value(at: SearchState, depth: number, { beam, bound }: Following): Costing {
    const { cost, first } = this.mendOnly(at);
    if (depth <= 0) return cost;
    yield undefined;
    if (depth === 1) return this.cheapest(at, { bound: Math.min(cost, bound) })?.cost ?? cost;
    const scored = this.scoreChecks(at);
    let best = Math.min(cost, scored[0]?.cost ?? Infinity);
    const how = () => ({ beam, bound: Math.min(best, bound) });
    for (const one of this.followed(scored, beam))
      best = Math.min(best, yield* this.check(at, one, depth, how()));
    for (const place of this.repairs(at, beam.repairs, first))
      best = Math.min(best, yield* this.repair(at, place, depth, how()));
    return best;
  }

  /** The best checks, and those that another one waits for. */
  followed(scored: readonly ScoredCheck[], beam: Beam): ScoredCheck[] {
    const openers = scored.slice(beam.checks).filter(({ check }) => this.#openers.has(check));
    return [...scored.slice(0, beam.checks), ...openers.slice(0, openersFollowed)];
  }
}
