// Expected minutes and needless repairs on the shipped trees, on the same hidden vehicles, compared in
// pairs: the advice, one step of it, the tree's own way, a chart. Repairs by odds (exact) are the control.
import { fillTree } from '../../src/core/feed/fill.ts';
import { mendingMinutes } from '../../src/core/reason/plan/exact.ts';
import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import { simulate } from '../../src/core/reason/plan/simulate.ts';
import { advisedPolicy, oddsOnly, ownWay } from '../../src/core/reason/plan/policies.ts';
import { fixedChart } from './chart-policy.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const count = Number(process.argv[2] ?? 500);
const seed = 20_260_411;
const { accesses } = shippedShop();
const names = ['advised', 'oneStep', 'ownWay', 'fixedChart'] as const;

console.log(`${count} hidden vehicles a tree, seed ${seed}; minutes with standard errors`);
console.log('behind each but the advised: how much more, with the standard error of the pairs;');
console.log('behind the slash: needless repairs a job');
console.log(
  ['tree'.padEnd(14), ...names.map((name) => name.padEnd(26)), 'odds only (exact)'].join(''),
);

const ratios = { ownWay: [] as number[], oddsOnly: [] as number[] };
const needless = new Map<string, number[]>(names.map((name) => [name, []]));
for (const tree of shippedTrees()) {
  const filled = fillTree(tree, {});
  const environment = environmentOf(filled, accesses);
  const policies = {
    advised: advisedPolicy(),
    oneStep: advisedPolicy([]),
    ownWay: ownWay(filled),
    fixedChart,
  };
  const found = simulate({ environment, count, seed, policies });
  const odds = mendingMinutes(environment, oddsOnly);
  const cells = found.map((one, at) => {
    needless.get(one.policy)?.push(one.needless);
    const pairs = at === 0 ? '' : ` (${one.more.toFixed(0)} ±${one.moreError.toFixed(1)})`;
    return `${one.mean.toFixed(0)} ±${one.error.toFixed(1)}${pairs} / ${one.needless.toFixed(2)}`.padEnd(
      26,
    );
  });
  console.log([tree.id.padEnd(14), ...cells, odds.toFixed(0)].join(''));
  const meanOf = (name: string): number => found.find(({ policy }) => policy === name)?.mean ?? NaN;
  ratios.ownWay.push(meanOf('advised') / meanOf('ownWay'));
  ratios.oddsOnly.push(meanOf('advised') / odds);
}

const mean = (list: readonly number[]): string =>
  (list.reduce((sum, one) => sum + one, 0) / list.length).toFixed(2);
const few = ratios.oddsOnly.filter((share) => share <= 0.7).length;
const spared = needless.get('advised') ?? [];
console.log(
  `advised / own way    mean ${mean(ratios.ownWay)}, worst ${Math.max(...ratios.ownWay).toFixed(2)}  (target: under 1 on every tree, mean at most 0.85)`,
);
console.log(
  `advised / odds only  at most 0.70 on ${few} of ${ratios.oddsOnly.length} trees  (target: most)`,
);
console.log(
  `needless a job       ${names.map((name) => `${name} ${mean(needless.get(name) ?? [])}`).join(', ')}; worst ${Math.max(...spared).toFixed(2)}  (target: advised at most 0.40, at most 0.60 on every tree)`,
);
