import fc from 'fast-check';
import { expect, test } from 'vitest';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import {
  inputOf,
  type JobState,
  type CheckFinding,
} from '../../../../src/core/reason/belief/evidence.ts';
import { makeModel, type Model } from '../../../../src/core/reason/belief/model.ts';
import { makeRandom } from '../../../../src/core/reason/plan/random.ts';
import { fillTree } from '../../../../src/core/feed/fill.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { randomState, randomTree } from '../random-trees.ts';

const seeded = { seed: 20_260_411, numRuns: 200 };
const anySeed = fc.integer({ min: 0, max: 2 ** 31 - 1 });
const size = { causes: 5, checks: 5, links: 0.5 };

/** Chance of every cause now, and the logarithm of the evidence; undefined when it is impossible. */
const chances = (tree: Tree, state: JobState) => chancesIn(makeModel(tree), state);

/** The same by a model that is made once for many states. */
function chancesIn(model: Model, state: JobState) {
  const input = inputOf(model, state);
  const belief = input.kind === 'good' ? believe(input.value) : input;
  if (belief.kind === 'bad') return undefined;
  return { now: belief.value.chances, logEvidence: belief.value.logEvidence };
}

const close = (one: readonly number[] = [], other: readonly number[] = []): boolean =>
  one.length === other.length &&
  one.every((chance, at) => Math.abs(chance - (other[at] ?? 2)) < 1e-12);

/** Findings of different checks with no repair between: the only ones whose order is free. */
function looseFindings(seed: number, tree: Tree): readonly CheckFinding[] {
  const { findings } = randomState(seed + 1, tree, 9);
  const last = new Map(findings.map((finding) => [finding.check, { ...finding, at: 0 }]));
  return [...last.values()];
}

test('the order of findings does not matter', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, size);
      const findings = looseFindings(seed, tree);

      const one = chances(tree, { findings, repairs: [] });
      const other = chances(tree, { findings: findings.toReversed(), repairs: [] });

      expect(close(one?.now, other?.now)).toBe(true);
    }),
    seeded,
  );
});

test('repeating a finding changes nothing', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, size);
      const findings = looseFindings(seed, tree);

      const once = chances(tree, { findings, repairs: [] });
      const often = chances(tree, {
        findings: [...findings, ...findings, ...findings],
        repairs: [],
      });

      expect(close(once?.now, often?.now)).toBe(true);
    }),
    seeded,
  );
});

test('an interval of results equals the mixture of them', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, size);
      const [check = ''] = Object.keys(tree.checks).filter((id) => id !== tree.complaint.confirm);
      const others = looseFindings(seed, tree).filter((finding) => finding.check !== check);
      const told = (lo: number, hi: number) =>
        chances(tree, { findings: [...others, { check, lo, hi, at: 0 }], repairs: [] });

      const [either, first, second] = [told(0, 1), told(0, 0), told(1, 1)];
      const weights = [first, second].map((one) =>
        one === undefined ? 0 : Math.exp(one.logEvidence),
      );
      const total = (weights[0] ?? 0) + (weights[1] ?? 0);
      const mixed = either?.now.map(
        (_, at) =>
          ((weights[0] ?? 0) * (first?.now[at] ?? 0) + (weights[1] ?? 0) * (second?.now[at] ?? 0)) /
          total,
      );

      expect(either === undefined || close(either.now, mixed)).toBe(true);
    }),
    seeded,
  );
});

test('one by one equals at once: the evidence is the product of its parts', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, size);
      const findings = looseFindings(seed, tree);
      const upTo = (count: number) =>
        chances(tree, { findings: findings.slice(0, count), repairs: [] });

      const steps = findings.map((_, at) => {
        const [before, now] = [upTo(at), upTo(at + 1)];
        return before === undefined || now === undefined
          ? Number.NaN
          : now.logEvidence - before.logEvidence;
      });
      const sum = steps.reduce((total, step) => total + step, upTo(0)?.logEvidence ?? 0);
      const whole = upTo(findings.length)?.logEvidence;

      expect(Number.isNaN(sum) || Math.abs(sum - (whole ?? 0)) < 1e-9).toBe(true);
    }),
    seeded,
  );
});

test('a repair takes its cause away, whatever was found', () => {
  fc.assert(
    fc.property(anySeed, (seed) => {
      const tree = randomTree(seed, size);
      const findings = looseFindings(seed, tree);

      const after = chances(tree, { findings, repairs: [{ cause: 'c0', at: 0 }] });

      expect(after === undefined || after.now[0] === 0).toBe(true);
    }),
    seeded,
  );
});

test('chances stay within 0 and 1 over 10,000 random walks of the shipped trees', () => {
  const trees = shippedTrees().map((shipped) => {
    const tree = fillTree(shipped, {});
    return { tree, model: makeModel(tree) };
  });
  const random = makeRandom(20_260_411);
  const draw = (below: number): number => Math.floor(random() * below);
  let [lowest, highest] = [1, 0];

  for (let walk = 0; walk < 10_000; walk += 1) {
    const drawn = trees[draw(trees.length)];
    if (drawn === undefined) continue;
    const now = chancesIn(drawn.model, randomWalk(drawn.tree, draw))?.now ?? [];
    lowest = Math.min(lowest, ...now);
    highest = Math.max(highest, ...now);
  }

  expect(lowest).toBeGreaterThanOrEqual(0);
  expect(highest).toBeLessThanOrEqual(1);
}, 120_000);

/** Any findings a tree can give, with a repair among them now and then. */
function randomWalk(tree: Tree, draw: (below: number) => number): JobState {
  const checks = Object.entries(tree.checks);
  const causes = Object.keys(tree.causes);
  const repairs: { cause: string; at: number }[] = [];
  const findings: CheckFinding[] = [];
  const steps = 1 + draw(9);
  for (let step = 0; step < steps; step += 1) {
    if (draw(6) === 0)
      repairs.push({ cause: causes[draw(causes.length)] ?? '', at: repairs.length });
    const [check = '', { results } = { results: [] }] = checks[draw(checks.length)] ?? [];
    const lo = draw(results.length);
    findings.push({ check, lo, hi: lo, at: repairs.length });
  }
  return { findings, repairs };
}
