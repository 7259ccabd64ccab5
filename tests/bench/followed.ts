// Somebody who only follows the first line of the advice, on vehicles with two faults or more and 3 %
// stray results: what goes wrong, by tree.
import { fillTree } from '../../src/core/feed/fill.ts';
import { environmentOf } from '../../src/core/reason/plan/episode.ts';
import { makeRandom } from '../../src/core/reason/plan/random.ts';
import { follow } from '../helpers/followed.ts';
import { shippedShop, shippedTrees } from '../helpers/library.ts';

const walks = Number(process.argv[2] ?? 2000);
const seed = 20_260_411;
const { accesses } = shippedShop();
const trees = shippedTrees();
const each = Math.ceil(walks / trees.length);
const all = new Map<string, number>();
for (const tree of trees) {
  const filled = fillTree(tree, {});
  const environment = environmentOf(filled, accesses);
  const random = makeRandom(seed);
  const faults = new Map<string, number>();
  for (let walk = 0; walk < each; walk += 1) {
    const fault = follow(filled, environment, random) ?? 'mended';
    faults.set(fault, (faults.get(fault) ?? 0) + 1);
    all.set(fault, (all.get(fault) ?? 0) + 1);
  }
  console.log(
    `${tree.id.padEnd(14)}${[...faults].map(([fault, count]) => `${fault} ${count}`).join(', ')}`,
  );
}
console.log(
  `all           ${[...all].map(([fault, count]) => `${fault} ${count}`).join(', ')}  (target: mended only)`,
);
