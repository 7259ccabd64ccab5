import { at } from '../../core/at.ts';
import { fillTree } from '../../core/feed/fill.ts';
import { exactMinutes, mendingMinutes } from '../../core/reason/plan/exact.ts';
import { environmentOf } from '../../core/reason/plan/episode.ts';
import { simulate, type Simulated } from '../../core/reason/plan/simulate.ts';
import { advisedPolicy, oddsOnly, ownWay } from '../../core/reason/plan/policies.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Library, Shop } from '../../core/tree/shop.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { openLibrary, treeNamed } from '../library.ts';
import { type Given } from '../options.ts';

/** Expected minutes of an episode: followed through every way, or from hidden vehicles with a standard error. */
type Cost =
  | { readonly by: 'exact'; readonly minutes: number }
  | {
      readonly by: 'simulated';
      readonly minutes: number;
      readonly error: number;
      /** Repairs of causes that were not there, a job. */
      readonly needless: number;
      /** Minutes more than the advised order takes on the same vehicles, with the standard error of the pairs. */
      readonly more: number;
      readonly moreError: number;
    };

/** What an episode costs, in minutes, by who chooses the steps. */
type Plan = {
  readonly tree: string;
  readonly runs: number;
  readonly seed: number;
  readonly policies: Readonly<Record<'advised' | 'ownWay' | 'oddsOnly', Cost>>;
};

const usual = { runs: 200, seed: 20_260_411 };

/** Places that an exact evaluation may look at: a tree of the usual size has far too many. */
const mostPlaces = 2000;

/**
 * Expected minutes of a tree to a proven repair, from the tree's own numbers: the advice that leads
 * the screens, the tree's own way and then the advice, repairs by odds alone. All begin with the
 * complaint's own test and repeat what a repair asks to have repeated, as the screens do. Repairs by
 * odds, the control, are worked out exactly, and so are the others on a small tree; else both are
 * sent to the same hidden vehicles.
 */
function planOf(tree: Tree, shop: Shop, { runs, seed } = usual): Plan {
  const filled = fillTree(tree, {});
  const environment = environmentOf(filled, shop.accesses);
  const policies = { advised: advisedPolicy(), ownWay: ownWay(filled) };
  const [advised, own] = Object.values(policies).map((policy) =>
    exactMinutes(environment, policy, mostPlaces),
  );
  const exact = (minutes: number): Cost => ({ by: 'exact', minutes });
  const oddsAlone = exact(mendingMinutes(environment, oddsOnly));
  const base = { tree: tree.id, runs, seed };
  if (advised !== undefined && own !== undefined)
    return {
      ...base,
      policies: { advised: exact(advised), ownWay: exact(own), oddsOnly: oddsAlone },
    };
  const found = simulate({ environment, count: runs, seed, policies });
  return {
    ...base,
    policies: {
      advised: simulatedCost(at(found, 0)),
      ownWay: simulatedCost(at(found, 1)),
      oddsOnly: oddsAlone,
    },
  };
}

const simulatedCost = ({ mean, error, needless, more, moreError }: Simulated): Cost => ({
  by: 'simulated',
  minutes: mean,
  error,
  needless,
  more,
  moreError,
});

/** `droplight trees plan [TREE] [--runs N] [--seed N] [--json]`. */
export function planTrees(io: Io, given: Given, [id]: readonly string[]): Ended {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const chosen = chosenTrees(library.value, id);
  if (chosen.kind === 'bad') return chosen;
  const options = {
    runs: Number(given.text('runs') ?? usual.runs),
    seed: Number(given.text('seed') ?? usual.seed),
  };
  if (!Number.isInteger(options.runs) || options.runs < 2 || !Number.isInteger(options.seed))
    return bad({
      code: 'no-number',
      message: 'Runs and seed are whole numbers, runs at least 2.',
      mend: 'Use: droplight trees plan TREE --runs 200 --seed 1',
    });
  const plans = chosen.value.map((tree) => planOf(tree, library.value.shop, options));
  if (given.flag('json')) printJson(io, id === undefined ? plans : plans[0]);
  else io.out(`${planLines(plans).join('\n')}\n`);
  return done;
}

function chosenTrees(library: Library, id: string | undefined): Parsed<readonly Tree[]> {
  if (id === undefined) return good(library.trees);
  const tree = treeNamed(id, library);
  return tree.kind === 'good' ? good([tree.value]) : tree;
}

function planLines(plans: readonly Plan[]): readonly string[] {
  const { runs, seed } = plans[0] ?? usual;
  return [
    'Expected minutes to a proven repair: exact, or with ± standard error',
    `from ${runs} hidden vehicles (seed ${seed}), the same for both ways. Needless:`,
    'repairs of what was sound, a job.',
    lineOf(['tree', 'advised', 'own way', 'more', 'odds only', 'needless', 'own way']),
    ...plans.map(({ tree, policies: { advised, ownWay, oddsOnly: odds } }) =>
      lineOf([
        tree,
        showCost(advised),
        showCost(ownWay),
        showMore(ownWay, advised),
        odds.minutes.toFixed(0),
        showNeedless(advised),
        showNeedless(ownWay),
      ]),
    ),
  ];
}

const lineOf = ([name = '', ...cells]: readonly string[]): string =>
  [name.padEnd(14), ...cells.map((cell) => cell.padStart(11))].join('').trimEnd();

const showCost = (cost: Cost): string =>
  cost.by === 'exact'
    ? cost.minutes.toFixed(0)
    : `${cost.minutes.toFixed(0)} ±${cost.error.toFixed(0)}`;

const showMore = (cost: Cost, than: Cost): string =>
  cost.by === 'exact'
    ? (cost.minutes - than.minutes).toFixed(0)
    : `${cost.more.toFixed(0)} ±${cost.moreError.toFixed(0)}`;

const showNeedless = (cost: Cost): string => (cost.by === 'exact' ? '-' : cost.needless.toFixed(2));
