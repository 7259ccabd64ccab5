import { expect, test } from 'vitest';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import { environmentOf } from '../../../../src/core/reason/plan/episode.ts';
import { makeRandom } from '../../../../src/core/reason/plan/random.ts';
import { follow } from '../../../helpers/followed.ts';
import { guardedShop, guardedTree } from '../../../helpers/guarded.ts';
import { shippedShop, shippedTrees } from '../../../helpers/library.ts';

const { accesses } = shippedShop();

// `npm run bench followed` walks two thousand.
test.each(shippedTrees().map((tree) => [tree.id, fillTree(tree, {})] as const))(
  'who only follows the first line on vehicles of %s with two faults and stray results gets them mended or led on',
  (_, tree) => {
    const environment = environmentOf(tree, accesses);
    const random = makeRandom(1972);

    const faults = [1, 2, 3].map(() => follow(tree, environment, random));

    expect(faults).toEqual([undefined, undefined, undefined]);
  },
);

test('no step behind a shut safeguard is advised', () => {
  const tree = fillTree(guardedTree, {});
  const environment = environmentOf(tree, guardedShop.accesses);
  const random = makeRandom(1972);

  const faults = Array.from({ length: 40 }, () => follow(tree, environment, random));

  expect(faults).not.toContain('behind a shut gate');
  expect(faults).not.toContain('repair against the rule');
  expect(faults).not.toContain('no next step');
});
