import { at as entry } from '../../at.ts';
import type { RepairOnly } from './repair-only.ts';
import { afterCheck, canTell, split } from './search-state.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

/** Ways less likely than this are mended to their end. */
export const negligible = 1e-7;

/**
 * What a probe of a row of branches is worth: one probe tells little by itself, the half-split to its
 * end tells which branch it is. Walks a block by its own way, which halves it by odds and minutes, to
 * the look at the branch; at every place it goes on only where that costs less than to mend at once.
 * What comes out is the cost of a plan that can be carried out, so never less than the best one's.
 */
export class BlockWalk {
  readonly #tables: SearchTables;
  readonly #plan: RepairOnly;
  /** The checks that blocks stand for, by index. */
  readonly checks: readonly number[];

  constructor(tables: SearchTables, plan: RepairOnly) {
    this.#tables = tables;
    this.#plan = plan;
    this.checks = tables.input.model.checks.flatMap(({ goesOn }, check) =>
      goesOn.length > 0 ? [check] : [],
    );
  }

  /** Expected cost of a check with what follows it in its block, times the mass; undefined where it is in none. */
  cost(at: SearchState, check: number, parts: readonly Float64Array[]): number | undefined {
    return this.checks.includes(check) ? this.#costBelow(at, check, parts) : undefined;
  }

  /** The same, not added up beyond the bound. */
  #costBelow(
    at: SearchState,
    check: number,
    parts: readonly Float64Array[],
    bound = Infinity,
  ): number {
    const { costs, input } = this.#tables;
    const { goesOn } = entry(input.model.checks, check);
    let cost = at.mass * costs.cost(check, at.opened, at.standing);
    for (const [result, weights] of parts.entries()) {
      if (cost >= bound) break;
      const next = afterCheck(this.#tables, at, check, { result, weights });
      if (next.mass <= 0) continue;
      const mend = this.#plan.cost(weights, next);
      cost += Math.min(mend, this.#goneOn(next, goesOn[result], mend));
    }
    return cost;
  }

  /** The cost of going on with the check that the block names next; Infinity where that cannot be. */
  #goneOn(at: SearchState, check: number | undefined, bound: number): number {
    if (check === undefined || at.mass <= negligible) return Infinity;
    if (!canTell(this.#tables, at, check)) return Infinity;
    return this.#costBelow(at, check, split(this.#tables, at, check), bound);
  }
}
