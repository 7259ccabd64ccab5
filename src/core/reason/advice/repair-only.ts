import { at as entry, realAt, wholeAt } from '../../at.ts';
import type { SearchState } from './search-state.ts';
import type { SearchTables } from './search-tables.ts';

/** A plan ends once less than this share of its mass is unproved. */
const negligible = 1e-5;

/** A fault set and its weight. */
type Weighed = { readonly set: number; readonly weight: number };

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
   * by the mass of the weights. Opening up is paid once. A cost from `bound` on is not worked out to
   * the end.
   */
  cost(
    weights: Float64Array,
    at: SearchState,
    from: Pick<SearchState, 'opened' | 'standing'> = at,
    bound = Infinity,
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
    while (unproved > enough && spent < bound) {
      const best = this.#best(prices.cost);
      if (best < 0) break;
      if (this.first < 0) this.first = best;
      spent += unproved * realAt(prices.cost, best);
      this.work += unproved * realAt(prices.minutes, best);
      unproved -= this.#mend(best);
      const step = costs.repair(entry(causes, best));
      const open = opened | wholeAt(costs.masks, step);
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

  /** Counts the gain of every cause: the share of each fault set that is cured once it is mended. */
  #start(): number {
    const [weights, lefts, gains] = [this.#weights, this.#left, this.#gains];
    const { silent } = this.#tables;
    gains.fill(0);
    let all = 0;
    for (let index = 0; index < weights.length; index += 1) {
      const weight = realAt(weights, index);
      if (weight === 0) continue;
      all += weight;
      const set = wholeAt(lefts, index);
      const whole = realAt(silent, set);
      const scaled = scale(weight, whole);
      for (let rest = set; rest !== 0; rest &= rest - 1) {
        const bit = rest & -rest;
        const place = 31 - Math.clz32(bit);
        gains[place] = realAt(gains, place) + scaled * (realAt(silent, set & ~bit) - whole);
      }
    }
    return all;
  }

  /**
   * Takes a cause out of every fault set that holds it, and counts what the others there gain now.
   * @returns the weight that is cured by it
   */
  #mend(place: number): number {
    const [weights, lefts] = [this.#weights, this.#left];
    const bit = 1 << place;
    let cured = 0;
    for (const index of entry(this.#holding, place)) {
      const set = wholeAt(lefts, index);
      const weight = realAt(weights, index);
      if ((set & bit) === 0 || weight === 0) continue;
      const others = set & ~bit;
      const left = weight * (1 - this.#tables.gain(set, place));
      cured += weight - left;
      weights[index] = left;
      lefts[index] = others;
      if (others !== 0) this.#recount({ set, weight }, { set: others, weight: left });
    }
    this.#gains[place] = 0;
    return cured;
  }

  /** Counts a fault set with the weight that it has now, in place of what it was before. */
  #recount(before: Weighed, now: Weighed): void {
    const { silent } = this.#tables;
    const gains = this.#gains;
    const [wholeBefore, wholeNow] = [realAt(silent, before.set), realAt(silent, now.set)];
    const [scaleBefore, scaleNow] = [
      scale(before.weight, wholeBefore),
      scale(now.weight, wholeNow),
    ];
    for (let rest = now.set; rest !== 0; rest &= rest - 1) {
      const bit = rest & -rest;
      const place = 31 - Math.clz32(bit);
      gains[place] =
        realAt(gains, place) -
        scaleBefore * (realAt(silent, before.set & ~bit) - wholeBefore) +
        scaleNow * (realAt(silent, now.set & ~bit) - wholeNow);
    }
  }
}

/** A weight, given that the complaint shows: `silent` is the chance that it does not. */
const scale = (weight: number, silent: number): number => (silent < 1 ? weight / (1 - silent) : 0);
