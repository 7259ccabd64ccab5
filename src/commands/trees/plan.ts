import { fillTree } from '../../core/feed/fill.ts';
import { exactMinutes, mendingMinutes } from '../../core/reason/plan/exact.ts';
import { environmentOf } from '../../core/reason/plan/episode.ts';
import { simulate } from '../../core/reason/plan/simulate.ts';
import { advisedPolicy, oddsOnly, ownWay, type Policy } from '../../core/reason/plan/policies.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Library, Shop } from '../../core/tree/shop.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { openLibrary, treeNamed } from '../library.ts';
import { type Given } from '../options.ts';

/** Expected minutes of an episode: followed through every way, or from hidden vehicles with a standard error. */
type Cost =
  | { readonly by: 'exact'; readonly minutes: number }
  | { readonly by: 'simulated'; readonly minutes: number; readonly error: number };

const policyNames = ['advised', 'ownWay', 'oddsOnly'] as const;
type PolicyName = (typeof policyNames)[number];

/** What an episode costs, in minutes, by who chooses the steps. */
type Plan = {
  readonly tree: string;
  readonly runs: number;
  readonly seed: number;
  readonly policies: Readonly<Record<PolicyName, Cost>>;
};

const usual = { runs: 500, seed: 20_260_411 };

/** Places that an exact evaluation may look at: a tree of the usual size has far too many. */
const mostPlaces = 2000;

/**
 * Expected minutes of a tree to a proven repair, from the tree's own numbers: the advised order
 * (looking two steps ahead), the tree's own way and then the advice, repairs by odds alone. All begin
 * with the complaint's own test and repeat what a repair asks to have repeated, as the screens do.
 * Repairs by odds are worked out exactly, and so are the others on a small tree; else they are simulated.
 */
function planOf(tree: Tree, shop: Shop, { runs, seed } = usual): Plan {
  const filled = fillTree(tree, {});
  const environment = environmentOf(filled, shop.accesses);
  const policies: Record<PolicyName, Policy> = {
    advised: advisedPolicy(),
    ownWay: ownWay(filled),
    oddsOnly,
  };
  const costOf = (name: PolicyName): Cost => {
    const policy = policies[name];
    const minutes =
      name === 'oddsOnly'
        ? mendingMinutes(environment, policy)
        : exactMinutes(environment, policy, mostPlaces);
    if (minutes !== undefined) return { by: 'exact', minutes };
    const count = { count: runs, seed };
    const [found] = simulate({ environment, ...count, policies: { [name]: policy } });
    if (found === undefined) throw new Error('a policy that was simulated has a mean');
    return { by: 'simulated', minutes: found.mean, error: found.error };
  };
  return {
    tree: tree.id,
    runs,
    seed,
    policies: {
      advised: costOf('advised'),
      ownWay: costOf('ownWay'),
      oddsOnly: costOf('oddsOnly'),
    },
  };
}

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
      mend: 'Use: droplight trees plan TREE --runs 500 --seed 1',
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
  const head = ['advised', 'own way', 'odds only'];
  const { runs, seed } = plans[0] ?? usual;
  return [
    'Expected minutes to a proven repair: exact, or with ± standard error',
    `from ${runs} hidden vehicles (seed ${seed}).`,
    ['tree'.padEnd(14), ...head.map((one) => one.padStart(13))].join(''),
    ...plans.map(({ tree, policies }) => {
      const costs = policyNames.map((name) => showCost(policies[name]).padStart(13));
      return [tree.padEnd(14), ...costs].join('').trimEnd();
    }),
  ];
}

/** `129 ±5.3`, or `181` when exact; the signs stand below one another. */
const showCost = (cost: Cost): string =>
  cost.by === 'exact'
    ? `${cost.minutes.toFixed(0)}      `
    : `${cost.minutes.toFixed(0)} ±${cost.error.toFixed(1).padEnd(4)}`;
