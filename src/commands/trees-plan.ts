import { fillTree } from '../core/feed/fill.ts';
import { makeModel } from '../core/reason/model.ts';
import { rounds } from '../core/reason/search.ts';
import { simulate } from '../core/reason/simulate.ts';
import { advisedWalker, fixedChart, oddsOnly, ownWay } from '../core/reason/walkers.ts';
import type { Tree } from '../core/tree/model.ts';
import type { Shop } from '../core/tree/shop.ts';
import type { Library } from '../store/library.ts';
import { fail, printJson, type ExitCode, type Io } from './io.ts';
import { openLibrary } from './library.ts';
import { treeNamed } from './open.ts';
import { firstOf, type Given } from './options.ts';

/** What a job costs, in minutes, by who chooses the steps. */
export type Plan = {
  readonly tree: string;
  readonly runs: number;
  readonly seed: number;
  readonly walkers: Readonly<Record<string, { readonly minutes: number; readonly error: number }>>;
};

const usual = { runs: 500, seed: 20_260_411 };

/**
 * Expected minutes of a tree to a proven repair, by simulation over hidden vehicles drawn from the
 * tree's own numbers: the advised order (looking two steps ahead), the tree's own way, repairs by odds alone, a fixed chart.
 */
export function planOf(tree: Tree, shop: Shop, { runs, seed } = usual): Plan {
  const filled = fillTree(tree, {});
  const simulated = simulate({
    model: makeModel(filled),
    accesses: shop.accesses,
    count: runs,
    seed,
    walkers: {
      advised: advisedWalker(rounds.slice(0, 1)),
      ownWay: ownWay(filled),
      oddsOnly,
      fixedChart,
    },
  });
  return {
    tree: tree.id,
    runs,
    seed,
    walkers: Object.fromEntries(
      simulated.map(({ walker, mean, error }) => [walker, { minutes: mean, error }]),
    ),
  };
}

/** `droplight trees plan [TREE] [--runs N] [--seed N] [--json]`. */
export function planTrees(io: Io, given: Given, [id]: readonly string[]): ExitCode {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return fail(io, firstOf(library.problems));
  const chosen = chosenTrees(io, library.value, id);
  if (typeof chosen === 'number') return chosen;
  const options = {
    runs: Number(given.text('runs') ?? usual.runs),
    seed: Number(given.text('seed') ?? usual.seed),
  };
  if (!Number.isInteger(options.runs) || options.runs < 2 || !Number.isInteger(options.seed))
    return fail(io, {
      code: 'no-number',
      message: 'Runs and seed are whole numbers, runs at least 2.',
      mend: 'Use: droplight trees plan TREE --runs 500 --seed 1',
    });
  const plans = chosen.map((tree) => planOf(tree, library.value.shop, options));
  if (given.flag('json')) printJson(io, id === undefined ? plans : plans[0]);
  else io.out(`${planLines(plans).join('\n')}\n`);
  return 0;
}

function chosenTrees(io: Io, library: Library, id: string | undefined): readonly Tree[] | ExitCode {
  if (id === undefined) return library.trees;
  const tree = treeNamed(id, library);
  return tree.kind === 'good' ? [tree.value] : fail(io, firstOf(tree.problems));
}

function planLines(plans: readonly Plan[]): readonly string[] {
  const names = ['advised', 'ownWay', 'oddsOnly', 'fixedChart'];
  const head = ['tree', 'advised', 'own way', 'odds only', 'fixed chart'];
  const cell = (plan: Plan, name: string): string => {
    const found = plan.walkers[name];
    return found === undefined ? '' : `${found.minutes.toFixed(0)} ±${found.error.toFixed(1)}`;
  };
  return [
    `Expected minutes to a proven repair, with standard errors (${plans[0]?.runs ?? 0} hidden vehicles, seed ${plans[0]?.seed ?? 0})`,
    [head[0]?.padEnd(14), ...head.slice(1).map((one) => one.padStart(13))].join(''),
    ...plans.map((plan) =>
      [plan.tree.padEnd(14), ...names.map((name) => cell(plan, name).padStart(13))].join(''),
    ),
  ];
}
