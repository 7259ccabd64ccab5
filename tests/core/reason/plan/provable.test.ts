import { expect, test } from 'vitest';
import { environmentOf } from '../../../../src/core/reason/plan/episode.ts';
import { ownWay } from '../../../../src/core/reason/plan/policies.ts';
import { simulate } from '../../../../src/core/reason/plan/simulate.ts';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { guardedShop, guardedTree } from '../../../helpers/guarded.ts';

/** One sound vehicle in two has milky oil: nothing mends that, and its engine is never run. */
const often: Tree = {
  ...guardedTree,
  checks: Object.fromEntries(
    Object.entries(guardedTree.checks).map(([id, check]) => [
      id,
      id === 'oil-look' ? { ...check, background: [0.5, 0.5] } : check,
    ]),
  ),
};

test('no vehicle is hidden whose safeguard stays shut with everything mended', () => {
  const tree = fillTree(often, {});
  const [own] = simulate({
    environment: environmentOf(tree, guardedShop.accesses),
    count: 60,
    seed: 5,
    policies: { own: ownWay(tree) },
  });

  expect(own?.mean).toBeGreaterThan(0);
});
