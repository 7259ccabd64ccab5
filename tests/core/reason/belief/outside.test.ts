import { expect, test } from 'vitest';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { makeInput } from '../../../../src/core/reason/belief/evidence.ts';
import { compile } from '../../../../src/core/reason/belief/compile.ts';
import { SetWeigher } from '../../../../src/core/reason/belief/fault-sets.ts';
import { makePriors, chanceOfSeveral } from '../../../../src/core/reason/belief/priors.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { Tree as TreeShape } from '../../../../src/core/tree/shapes.ts';

/**
 * A tree whose check `fever` has causes with the given links. The complaint is shown by every cause
 * alike and says nothing here.
 */
function treeOf(links: Readonly<Record<string, number>>, leak: number): Tree {
  const causes = Object.fromEntries(
    Object.keys(links).map((id) => [id, { name: id, odds: 10, repair: { do: ['x'], minutes: 1 } }]),
  );
  const rows = Object.entries(links).map(([id, link]) => {
    const miss = (1 - leak) * (1 - link);
    return [id, [miss, 1 - miss]] as const;
  });
  const results = [
    { id: 'no', label: 'no' },
    { id: 'yes', label: 'yes' },
  ];
  return TreeShape.parse({
    format: 1,
    id: 'outside',
    title: 'Outside check',
    complaint: { say: 'x', confirm: 'complaint' },
    start: 'fever',
    unlisted: 0,
    causes,
    checks: {
      complaint: { kind: 'look', ask: 'x', minutes: 1, results },
      fever: {
        kind: 'look',
        ask: 'x',
        minutes: 1,
        results,
        background: [1 - leak, leak],
        points: Object.fromEntries(rows),
      },
    },
  });
}

/** P(fever | exactly these causes), from the engine's own weights of that fault set with and without fever. */
function chanceOf(tree: Tree, present: readonly string[]): number {
  const weight = (result: number): number => {
    const finding = { check: 'fever', lo: result, hi: result, at: 0 };
    const complaint = { check: 'complaint', lo: 0, hi: 1, at: 0 };
    const made = makeInput(tree, { findings: [complaint, finding], repairs: [] });
    if (made.kind === 'bad') throw new Error(made.problems[0]?.message);
    const ids = made.value.model.causes.map(({ id }) => id);
    const set = present.map((id) => ids.indexOf(id));
    return Math.exp(new SetWeigher(made.value, compile(made.value)).log(set));
  };
  const [without, withFever] = [weight(0), weight(1)];
  return withFever / (without + withFever);
}

// Noisy-OR fever example (course slides, after Russell & Norvig): inhibitors cold .6, flu .2,
// malaria .1. Read in a copy. No leak there.
test.each([
  [['malaria'], 0.9],
  [['flu'], 0.8],
  [['flu', 'malaria'], 0.98],
  [['cold'], 0.4],
  [['cold', 'malaria'], 0.94],
  [['cold', 'flu'], 0.88],
  [['cold', 'flu', 'malaria'], 0.988],
] as const)(
  'fever with %j has the chance of the noisy-OR example, %d (read in a copy)',
  (present, chance) => {
    const tree = treeOf({ cold: 0.4, flu: 0.8, malaria: 0.9 }, 0);

    // The engine never lets a background be nothing: its floor of 0.005 moves these by less than 0.001.
    expect(chanceOf(tree, present)).toBeCloseTo(chance, 2);
    expect(Math.abs(chanceOf(tree, present) - chance)).toBeLessThan(1e-3);
  },
);

// Leaky noisy-OR table of a Bayesian-network user guide: leak .1, links .8 and .6 (read).
test.each([
  [[], 0.1],
  [['b'], 0.64],
  [['a'], 0.82],
  [['a', 'b'], 0.928],
] as const)('the leaky noisy-OR table with %j gives %d (read)', (present, chance) => {
  expect(chanceOf(treeOf({ a: 0.8, b: 0.6 }, 0.1), present)).toBeCloseTo(chance, 12);
});

test('the belief over two causes with a leaky check is the one worked by hand', () => {
  const tree = treeOf({ a: 0.8, b: 0.6 }, 0.1);
  const made = makeInput(tree, {
    findings: [{ check: 'fever', lo: 1, hi: 1, at: 0 }],
    repairs: [],
  });
  const belief = made.kind === 'good' ? believe(made.value) : made;
  if (made.kind === 'bad' || belief.kind === 'bad') throw new Error('no belief');
  const [pa = 0, pb = 0] = made.value.model.causes.map(({ prior }) => prior);
  // By hand: weights of {a}, {b}, {a,b} given the complaint (each cause shows it surely) times the table's rows.
  const [onlyA, onlyB, both] = [pa * (1 - pb) * 0.82, (1 - pa) * pb * 0.64, pa * pb * 0.928];
  const total = onlyA + onlyB + both;

  expect(belief.value.chances[0]).toBeCloseTo((onlyA + both) / total, 10);
  expect(belief.value.chances[1]).toBeCloseTo((onlyB + both) / total, 10);
});

test('the priors make two or more causes as likely as the tree says, given the complaint', () => {
  const causes = [30, 20, 10, 5].map((odds) => ({ odds, shows: 1 }));
  const priors = makePriors(causes, 0.2);

  expect(chanceOfSeveral(causes, priors)).toBeCloseTo(0.2, 9);
});
