import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

/** A plan ends once less than this share of its mass is unproved. */
const negligible = 1e-5;

/** Work arrays of one search, so that the innermost plan allocates nothing. */
export class RepairOnly {
  readonly #tables: SearchTables;
  readonly #weights: Float64Array;
  readonly #left: Int32Array;
  readonly #gains: Float64Array;
  /** By place of a cause: the fault sets that hold it, by index. */
  readonly #holding: readonly Int32Array[];
  /** The first repair of the last plan, as a place in the short list; -1 where there was none. */
  first = -1;
  /** Minutes of work in the last plan, without the price of parts. */
  work = 0;

  constructor(tables: SearchTables) {
    this.#tables = tables;
    this.#weights = new Float64Array(tables.sets.length);
    this.#left = new Int32Array(tables.sets.length);
    this.#gains = new Float64Array(tables.causes.length);
    this.#holding = tables.causes.map((_, place) => {
      const bit = 1 << place;
      return Int32Array.from(
        [...tables.sets.keys()].filter((index) => ((tables.sets[index] ?? 0) & bit) !== 0),
      );
    });
  }

  /**
   * Expected cost of mending one cause after the other, always the one with the greatest
   * gain for its cost, each with its proof (after Heckerman, Breese and Rommelse 1995). Weighted
   * by the mass of the weights. Opening up is paid once.
   */
  cost(
    weights: Float64Array,
    at: SearchState,
    from = { opened: at.opened, standing: at.standing },
  ): number {
    const { costs, causes } = this.#tables;
    this.#weights.set(weights);
    this.#left.set(at.left);
    let unproved = this.#start();
    const enough = unproved * negligible;
    let { opened, standing } = from;
    let prices = costs.repairs(opened, standing);
    let spent = 0;
    this.first = -1;
    this.work = 0;
    while (unproved > enough) {
      const best = this.#best(prices.cost);
      if (best < 0) break;
      if (this.first < 0) this.first = best;
      const cause = causes[best] ?? 0;
      spent += unproved * (prices.cost[best] ?? 0);
      this.work += unproved * (prices.minutes[best] ?? 0);
      unproved -= this.#mend(best);
      const step = costs.repair(cause);
      const open = opened | (costs.masks[step] ?? 0);
      const stands = costs.standingAfter(step, standing);
      if (open !== opened || stands !== standing) prices = costs.repairs(open, stands);
      [opened, standing] = [open, stands];
    }
    return spent;
  }

  /** The cause with the greatest gain for its cost, as a place; -1 where nothing is gained any more. */
  #best(cost: Float64Array): number {
    let best = -1;
    let bestRate = 0;
    for (let place = 0; place < cost.length; place += 1) {
      const gain = this.#gains[place] ?? 0;
      const rate = gain / (cost[place] ?? 0);
      if (gain > 0 && rate > bestRate) [best, bestRate] = [place, rate];
    }
    return best;
  }

  #start(): number {
    this.#gains.fill(0);
    let all = 0;
    for (let index = 0; index < this.#weights.length; index += 1) {
      all += this.#weights[index] ?? 0;
      this.#count(index, 1);
    }
    return all;
  }

  /** Adds a fault set's part to the gain of each of its causes, or takes it away. */
  #count(index: number, sign: number): void {
    const weight = this.#weights[index] ?? 0;
    const set = this.#left[index] ?? 0;
    if (weight === 0) return;
    const { silent } = this.#tables;
    const whole = silent[set] ?? 1;
    const scale = whole < 1 ? (sign * weight) / (1 - whole) : 0;
    for (let rest = set; rest !== 0; rest &= rest - 1) {
      const place = 31 - Math.clz32(rest & -rest);
      const gain = scale * ((silent[set & ~(1 << place)] ?? 1) - whole);
      this.#gains[place] = (this.#gains[place] ?? 0) + gain;
    }
  }

  /** @returns the weight that is cured by it */
  #mend(place: number): number {
    const bit = 1 << place;
    let cured = 0;
    for (const index of this.#holding[place] ?? []) {
      const set = this.#left[index] ?? 0;
      const weight = this.#weights[index] ?? 0;
      if ((set & bit) === 0 || weight === 0) continue;
      this.#count(index, -1);
      const left = weight * (1 - this.#tables.gain(set, place));
      cured += weight - left;
      this.#weights[index] = left;
      this.#left[index] = set & ~bit;
      this.#count(index, 1);
    }
    this.#gains[place] = 0;
    return cured;
  }
}
