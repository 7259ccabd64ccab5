// Expected minutes on the shipped trees: the advice against its own first step alone, the tree's own
// way, a chart (all on the same hidden vehicles, compared in pairs) and repairs by odds (exact).
import { fillTree } from '../../src/core/feed/fill.ts';
import { mendingMinutes } from '../../src/core/reason/plan/exact.ts';
import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import { rounds } from '../../src/core/reason/advice/search.ts';
import { simulate } from '../../src/core/reason/plan/simulate.ts';
import { advisedPolicy, oddsOnly, ownWay } from '../../src/core/reason/plan/policies.ts';
import { fixedChart } from './chart-policy.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const count = Number(process.argv[2] ?? 500);
const seed = 20_260_411;
const { accesses } = shippedShop();
const names = ['advised', 'oneStep', 'ownWay', 'fixedChart'] as const;

console.log(`${count} hidden vehicles a tree, seed ${seed}; minutes with standard errors`);
console.log('behind each but the advised: how much more, with the standard error of the pairs');
console.log(
  ['tree'.padEnd(14), ...names.map((name) => name.padEnd(22)), 'odds only (exact)'].join(''),
);

const shares = { ownWay: [] as number[], fixedChart: [] as number[], oddsOnly: [] as number[] };
for (const tree of shippedTrees()) {
  const filled = fillTree(tree, {});
  const environment = environmentOf(filled, accesses);
  const policies = {
    advised: advisedPolicy(rounds.slice(0, 1)),
    oneStep: advisedPolicy([]),
    ownWay: ownWay(filled),
    fixedChart,
  };
  const found = simulate({ environment, count, seed, policies });
  const odds = mendingMinutes(environment, oddsOnly);
  const cells = found.map(({ mean, error, more, moreError }, at) => {
    const pairs = at === 0 ? '' : ` (${more.toFixed(1)} ±${moreError.toFixed(1)})`;
    return `${mean.toFixed(0)} ±${error.toFixed(1)}${pairs}`.padEnd(22);
  });
  console.log([tree.id.padEnd(14), ...cells, odds.toFixed(0)].join(''));
  const advised = found[0]?.mean ?? 0;
  for (const name of ['ownWay', 'fixedChart'] as const)
    shares[name].push(advised / (found.find(({ policy }) => policy === name)?.mean ?? 0));
  shares.oddsOnly.push(advised / odds);
}

const mean = (list: readonly number[]): string =>
  (list.reduce((sum, one) => sum + one, 0) / list.length).toFixed(2);
const few = shares.oddsOnly.filter((share) => share <= 0.7).length;
console.log(
  `advised / own way      mean ${mean(shares.ownWay)}, worst ${Math.max(...shares.ownWay).toFixed(2)}, best ${Math.min(...shares.ownWay).toFixed(2)}  (target: under 1 on every tree; under 0.67 the tree wants mending)`,
);
console.log(
  `advised / odds only    at most 0.70 on ${few} of ${shares.oddsOnly.length} trees  (target: most)`,
);
console.log(`advised / fixed chart  mean ${mean(shares.fixedChart)}  (target: at most 0.50)`);
