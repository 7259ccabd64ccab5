import { at, realAt, wholeAt } from '../../at.ts';
import { sum } from '../../sum.ts';
import type { Tree } from '../../tree/model.ts';
import { nextOnWay, type OnWay } from '../../tree/way/way.ts';
import { freshInput } from '../belief/evidence.ts';
import type { Model } from '../belief/model.ts';
import { faultSets } from '../belief/fault-sets.ts';
import { atMost } from '../belief/tables.ts';
import { checkIndex } from './episode.ts';

/** One way through a tree, as far as the tree's own order goes. */
export type Route = {
  /** Checks and the results they show, in order. */
  readonly shown: readonly { readonly check: string; readonly result: number }[];
  readonly end: Exclude<OnWay, { kind: 'check' }>;
  /** Share of all vehicles with this complaint that go this way. */
  readonly share: number;
  /** By cause index: the chance that it is there on a vehicle that goes this way. */
  readonly chances: readonly number[];
};

/** Vehicles as fault sets, each weighed by the chance that it is this one. */
type Fleet = {
  readonly sets: readonly (readonly number[])[];
  readonly weights: Float64Array;
};

/** All sets of up to three causes (four where those are too few), given that the complaint is there. */
function fleetOf(model: Model): Fleet {
  const every = model.causes.map((_, index) => index);
  const { sets } = faultSets(freshInput(model), every);
  return {
    sets: sets.map(({ causes }) => causes),
    weights: Float64Array.from(sets, ({ chance }) => chance),
  };
}

/** Where a route goes on from what its checks have shown. */
export const nextOnRoute = (tree: Tree, shown: Route['shown']): OnWay =>
  nextOnWay(
    tree,
    shown.map((one) => ({ kind: 'shown', ...one })),
  );

/** The routes of the tree's own way that a vehicle with this complaint takes, likeliest kept. */
export class OwnRoutes {
  readonly #tree: Tree;
  readonly #model: Model;
  readonly #fleet: Fleet;
  readonly #least: number;
  /** The causes of all sets, set after set, and by set where its own end there. */
  readonly #members: Int32Array;
  readonly #ends: Int32Array;
  readonly #chances = new Map<number, readonly Float64Array[]>();
  readonly #routes: Route[] = [];

  /** @param least routes with a smaller share than this are not followed further */
  constructor(tree: Tree, model: Model, least: number) {
    this.#tree = tree;
    this.#model = model;
    this.#least = least;
    const fleet = fleetOf(model);
    this.#fleet = fleet;
    this.#members = Int32Array.from(fleet.sets.flat());
    let end = 0;
    this.#ends = Int32Array.from(fleet.sets, (set) => (end += set.length));
  }

  /** Every route, with the share of the vehicles that were followed to the end of one. */
  run(): { readonly routes: readonly Route[]; readonly followed: number } {
    this.#routes.length = 0;
    this.#go(this.#fleet.weights, []);
    return {
      routes: this.#routes,
      followed: this.#routes.reduce((all, { share }) => all + share, 0),
    };
  }

  #go(weights: Float64Array, shown: Route['shown']): void {
    const share = sum(weights);
    if (share <= 0 || share < this.#least) return;
    const to = nextOnRoute(this.#tree, shown);
    if (to.kind !== 'check') {
      this.#routes.push({ shown, end: to, share, chances: this.#marginals(weights, share) });
      return;
    }
    this.#results(checkIndex(this.#model, to.check)).forEach((chances, result) => {
      const left = weights.slice();
      for (let set = 0; set < left.length; set += 1)
        left[set] = realAt(left, set) * realAt(chances, set);
      this.#go(left, [...shown, { check: to.check, result }]);
    });
  }

  /** By result: its chance on each fault set; the complaint's own is known to be there. */
  #results(check: number): readonly Float64Array[] {
    const kept = this.#chances.get(check);
    if (kept !== undefined) return kept;
    const { background = [], links = [], results = [] } = this.#model.checks[check] ?? {};
    const first = check === this.#model.complaint ? 1 : 0;
    const made = results.map(() => new Float64Array(this.#fleet.sets.length));
    this.#fleet.sets.forEach((set, index) => {
      const linked = set.flatMap((cause) => {
        const totals = links[cause];
        return totals === undefined ? [] : [totals];
      });
      const upTo = (result: number): number => {
        let product = atMost(background, result);
        for (const totals of linked) product *= atMost(totals, result);
        return product;
      };
      let under = first === 0 ? 0 : upTo(0);
      const all = 1 - under;
      if (all <= 0) return;
      for (let result = first; result < made.length; result += 1) {
        const over = upTo(result);
        at(made, result)[index] = Math.max(0, over - under) / all;
        under = over;
      }
    });
    this.#chances.set(check, made);
    return made;
  }

  #marginals(weights: Float64Array, share: number): readonly number[] {
    const chances = new Float64Array(this.#model.causes.length);
    let place = 0;
    for (let set = 0; set < weights.length; set += 1) {
      const weight = realAt(weights, set);
      for (const end = wholeAt(this.#ends, set); place < end; place += 1) {
        const cause = wholeAt(this.#members, place);
        chances[cause] = realAt(chances, cause) + weight;
      }
    }
    return Array.from(chances, (chance) => chance / share);
  }
}
