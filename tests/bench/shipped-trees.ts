// Expected minutes on the shipped trees: the advice against the tree's own way, odds alone, a chart.
import { planOf, showCost, walkerNames } from '../../src/commands/trees-plan.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const runs = Number(process.argv[2] ?? 500);
const seed = 20_260_411;

console.log(
  `${runs} hidden vehicles a tree, seed ${seed}; minutes with standard errors, exact where there is none`,
);
console.log(['tree'.padEnd(14), ...walkerNames.map((name) => name.padStart(14))].join(''));
const shares = { oddsOnly: [] as number[], fixedChart: [] as number[], ownWay: [] as number[] };
for (const tree of shippedTrees()) {
  const { walkers } = planOf(tree, shippedShop(), { runs, seed });
  const cells = walkerNames.map((name) => showCost(walkers[name]).padStart(14));
  console.log([tree.id.padEnd(14), ...cells].join(''));
  for (const name of ['oddsOnly', 'fixedChart', 'ownWay'] as const)
    shares[name].push(walkers.advised.minutes / walkers[name].minutes);
}
const mean = (list: readonly number[]): string =>
  (list.reduce((sum, one) => sum + one, 0) / list.length).toFixed(2);
const few = shares.oddsOnly.filter((share) => share <= 0.7).length;
console.log(
  `advised / own way      mean ${mean(shares.ownWay)}, worst ${Math.max(...shares.ownWay).toFixed(2)}  (target: under 1 on every tree)`,
);
console.log(
  `advised / odds only    at most 0.70 on ${few} of ${shares.oddsOnly.length} trees  (target: most)`,
);
console.log(`advised / fixed chart  mean ${mean(shares.fixedChart)}  (target: at most 0.50)`);
