// The advice by odds that are off by a factor (log-normal, sd 0.7), on vehicles drawn from the true
// odds, against an oracle that knows them and against the tree's own way.
import { fillTree } from '../../src/core/feed/fill.ts';
import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import { advisedPolicy, ownWay, type Policy } from '../../src/core/reason/plan/policies.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { simulate } from '../../src/core/reason/plan/simulate.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const count = Number(process.argv[2] ?? 120);
const seed = 20_260_411;
const spread = 0.7;
const { accesses } = shippedShop();

/** The tree with every cause's odds multiplied by a draw of its own. */
function withOtherOdds(tree: Tree, random: () => number): Tree {
  const normal = (): number =>
    Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const causes = Object.entries(tree.causes).map(
    ([id, cause]) => [id, { ...cause, odds: cause.odds * Math.exp(spread * normal()) }] as const,
  );
  return { ...tree, causes: Object.fromEntries(causes) };
}

console.log(`${count} hidden vehicles a tree by odds of their own, seed ${seed}`);
console.log('minutes / needless repairs a job');
console.log(`${'tree'.padEnd(14)}${'oracle'.padEnd(16)}${'advised'.padEnd(16)}own way`);
const sums = [0, 1, 2].map(() => ({ minutes: 0, needless: 0 }));
for (const [index, tree] of shippedTrees().entries()) {
  const told = fillTree(tree, {});
  const environment = environmentOf(withOtherOdds(told, makeRandom(seed + index)), accesses);
  const { model } = environmentOf(told, accesses).input;
  const advised = advisedPolicy();
  // The mechanic's program knows the odds of the tree, whatever the vehicles are drawn from.
  const byTold: Policy = (_, state) => advised(model, state);
  const own = ownWay(told);
  const found = simulate({
    environment,
    count,
    seed: seed + index,
    policies: { oracle: advisedPolicy(), advised: byTold, own: (_, state) => own(model, state) },
  });
  found.forEach((one, at) => {
    const sum = sums[at];
    if (sum === undefined) return;
    sum.minutes += one.mean / (found[0]?.mean ?? NaN) / shippedTrees().length;
    sum.needless += one.needless / shippedTrees().length;
  });
  const cells = found.map((one) =>
    `${one.mean.toFixed(0)} / ${one.needless.toFixed(2)}`.padEnd(16),
  );
  console.log([tree.id.padEnd(14), ...cells].join('').trimEnd());
}
const [oracle, advised, own] = sums;
console.log(
  `minutes against the oracle's: advised ${advised?.minutes.toFixed(3)}, own way ${own?.minutes.toFixed(3)}  (target: advised at most 1.10)`,
);
console.log(
  `needless: oracle ${oracle?.needless.toFixed(2)}, advised ${advised?.needless.toFixed(2)}, own way ${own?.needless.toFixed(2)}  (target: advised at most 1.2 times the oracle's)`,
);
