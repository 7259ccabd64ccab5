import { expect, test } from 'vitest';
import { makeRandom } from '../../../src/core/reason/plan/random.ts';
import { givenAway, type Decision } from '../../../src/core/review/decision.ts';
import { decisionsOf } from '../../../src/core/review/decisions.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { shippedShop, shippedTrees } from '../../helpers/library.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';
import { walkOn, type Walker } from '../../helpers/walkers.ts';

// A few walks a tree stand here; `node tests/bench/walkers.ts 200 tree quicker advise` makes them all.
const seed = 20_260_411;
const trees = shippedTrees();
const shop = shippedShop();
const small = { tree: smallTree(), shop: smallShop };

const charges = (decisions: readonly Decision[]) =>
  decisions.flatMap(({ step, charged, better }) =>
    charged > 0
      ? [`${step.do} ${step.id}: ${charged}, better ${better?.step.id ?? 'nothing'}`]
      : [],
  );

test.each(trees.map((tree) => [tree.id, tree] as const))(
  'who follows only the screen is charged nothing: %s',
  (_, tree) => {
    const random = makeRandom(seed);
    for (const walker of ['tree', 'quicker'] as const) {
      const decisions = decisionsOf(walkOn({ tree, shop }, { walker, random, most: 15 }));
      expect(decisions.length).toBeGreaterThan(0);
      expect(charges(decisions)).toEqual([]);
    }
  },
);

test.each(['run-on', 'dim-lamps', 'no-supply'])(
  'who follows only the first line of the advice is charged nothing: %s',
  (id) => {
    const tree = trees.find((one) => one.id === id)!;
    const walk = { walker: 'advise', random: makeRandom(seed), most: 8 } as const;
    const decisions = decisionsOf(walkOn({ tree, shop }, walk));

    expect(decisions.length).toBeGreaterThan(3);
    expect(charges(decisions)).toEqual([]);
  },
);

test('who mends by odds is charged for most of the repairs', () => {
  const tree = trees.find(({ id }) => id === 'no-supply')!;
  const walk = { walker: 'odds', random: makeRandom(seed), most: 12 } as const;
  const repairs = decisionsOf(walkOn({ tree, shop }, walk)).filter(
    ({ step }) => step.do === 'repair',
  );

  expect(repairs.length).toBeGreaterThan(3);
  expect(repairs.filter(({ charged }) => charged > 0).length).toBeGreaterThan(repairs.length / 2);
});

test.each(['tree', 'quicker', 'advise', 'odds', 'random'] satisfies Walker[])(
  'over 200 jobs by %s nothing is charged beyond its step, nor beyond the clock',
  (walker) => {
    const random = makeRandom(seed);
    let charged = 0;
    for (let job = 0; job < 200; job += 1) {
      const recorded = walkOn(small, { walker, random, most: 10 });
      const decisions = decisionsOf(recorded);
      for (const one of decisions) {
        expect(one.charged).toBeLessThanOrEqual(Math.min(one.planned ?? 0, one.taken));
        expect(Number.isInteger(one.charged)).toBe(true);
      }
      expect(givenAway(decisions)).toBeLessThanOrEqual(
        fold(recorded.header, recorded.events).minutes,
      );
      charged += givenAway(decisions);
    }
    expect(charged > 0).toBe(walker === 'odds' || walker === 'random');
  },
);
