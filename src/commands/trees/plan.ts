import { at } from '../../core/at.ts';
import { fillTree } from '../../core/feed/fill.ts';
import { exactMinutes, mendingMinutes } from '../../core/reason/plan/exact.ts';
import { environmentOf } from '../../core/reason/plan/episode.ts';
import { simulate, type Simulated } from '../../core/reason/plan/simulate.ts';
import { advisedPolicy, oddsOnly, ownWay } from '../../core/reason/plan/policies.ts';
import { bad, good, showProblem, type Parsed } from '../../core/problem.ts';
import { cleanLine } from '../../core/text.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Library, Shop } from '../../core/tree/shop.ts';
import { printJson, type Ended, type Io } from '../io.ts';
import { openLibrary, openTree } from '../library.ts';
import { teller } from '../program/progress.ts';
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
function planOf(io: Io, tree: Tree, shop: Shop, { runs, seed } = usual): Plan {
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
  const { tell, end } = teller(io, cleanLine(`Planning ${tree.id}, jobs`));
  const found = simulate({ environment, count: runs, seed, policies, tell });
  end();
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
  const chosen = chosenTrees(io, given, id);
  if (chosen.kind === 'bad') return chosen;
  const { trees, shop, problems } = chosen.value;
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
  const plans = trees.map((tree) => planOf(io, tree, shop, options));
  if (given.flag('json')) printJson(io, id === undefined ? plans : plans[0]);
  else io.out(`${planLines(plans).join('\n')}\n`);
  for (const problem of problems) io.err(`${cleanLine(showProblem(problem))}\n`);
  return good(problems.length > 0 ? 1 : 0);
}

/** The tree named, or all of the library with what is wrong with those that cannot be planned. */
function chosenTrees(io: Io, given: Given, word: string | undefined): Parsed<Library> {
  if (word === undefined) return openLibrary(io, given);
  const opened = openTree(io, given, word);
  if (opened.kind === 'bad') return opened;
  const { tree, library } = opened.value;
  return good({ trees: [tree], shop: library.shop, problems: [] });
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
