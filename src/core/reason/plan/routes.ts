import { sum } from '../../sum.ts';
import type { Tree } from '../../tree/model.ts';
import { nextOnWay, type OnWay } from '../../tree/way.ts';
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
export type Fleet = {
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
  readonly #chances = new Map<number, readonly Float64Array[]>();
  readonly #routes: Route[] = [];

  /**
   * @param least routes with a smaller share than this are not followed further
   * @param fleet the vehicles that walk; left out, all that have this complaint
   */
  constructor(tree: Tree, model: Model, least: number, fleet: Fleet = fleetOf(model)) {
    this.#tree = tree;
    this.#model = model;
    this.#least = least;
    this.#fleet = fleet;
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
      const left = weights.map((weight, set) => weight * (chances[set] ?? 0));
      this.#go(left, [...shown, { check: to.check, result }]);
    });
  }

  /** By result: its chance on each fault set; the complaint's own is known to be there. */
  #results(check: number): readonly Float64Array[] {
    const kept = this.#chances.get(check);
    if (kept !== undefined) return kept;
    const { background = [], links = [], results = [] } = this.#model.checks[check] ?? {};
    const first = check === this.#model.complaint ? 1 : 0;
    const upTo = (set: readonly number[], result: number): number =>
      set.reduce(
        (product, cause) => {
          const totals = links[cause];
          return totals === undefined ? product : product * atMost(totals, result);
        },
        atMost(background, result),
      );
    const made = results.map((_, result) =>
      Float64Array.from(this.#fleet.sets, (set) => {
        if (result < first) return 0;
        const under = upTo(set, result - 1);
        const all = first === 0 ? 1 : 1 - upTo(set, 0);
        return all > 0 ? Math.max(0, upTo(set, result) - under) / all : 0;
      }),
    );
    this.#chances.set(check, made);
    return made;
  }

  #marginals(weights: Float64Array, share: number): readonly number[] {
    const chances = this.#model.causes.map(() => 0);
    this.#fleet.sets.forEach((set, index) => {
      for (const cause of set) chances[cause] = (chances[cause] ?? 0) + (weights[index] ?? 0);
    });
    return chances.map((chance) => chance / share);
  }
}
