import fc from 'fast-check';
import { expect, test } from 'vitest';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
import { broughtBy, withBrought } from '../../../../src/core/tree/brought.ts';
import { makeInput } from '../../../../src/core/reason/belief/evidence.ts';
import type { JobState } from '../../../../src/core/reason/belief/evidence.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { count } from './brute.ts';
import { randomState, randomTree } from '../random-trees.ts';

const exact = 1e-12;
const seeded = { seed: 20260411, numRuns: 150 };
const anySeed = fc.integer({ min: 0, max: 2 ** 31 - 1 });

function believed(tree: Tree, state: JobState) {
  const input = makeInput(tree, state);
  if (input.kind === 'bad') throw new Error(JSON.stringify(input.problems));
  const belief = believe(input.value);
  if (belief.kind === 'bad') return undefined;
  const ids = input.value.model.causes.map((cause) => cause.id);
  return {
    ...belief.value,
    setAside: input.value.setAside.length,
    byId: Object.fromEntries(ids.map((id, i) => [id, belief.value.atFirst[i]!])),
  };
}

/**
 * Largest distance between the belief and the count; Infinity where the belief is dead, or sets
 * findings aside that can all be true. Of what cannot be true there is a belief, and no count.
 */
function distance(tree: Tree, state: JobState): number {
  const counted = count(tree, state);
  const belief = believed(tree, state);
  if (belief === undefined || belief.setAside > 0 !== (counted.evidence === 0)) return Infinity;
  if (counted.evidence === 0) return 0;
  const chances = Object.entries(counted.atFirst).map(([id, chance]) =>
    Math.abs(chance - belief.byId[id]!),
  );
  const evidence = Math.abs(Math.exp(belief.logEvidence) / counted.evidence - 1);
  return Math.max(evidence / 10, ...chances);
}

test('on random small trees the belief equals the count of every possibility', () => {
  fc.assert(
    fc.property(anySeed, fc.integer({ min: 1, max: 6 }), (seed, causes) => {
      const tree = randomTree(seed, { causes, checks: 5, links: 0.5 });
      const state = randomState(seed + 1, tree, 9);

      expect(distance(tree, state)).toBeLessThanOrEqual(exact);
    }),
    seeded,
  );
});

/** Checks that come and go: any of them, the complaint's own test too. */
const someChecks = (seed: number): readonly string[] =>
  ['k0', 'k1', 'k2', 'k3', 'k4'].filter((_, index) => (seed >> index) % 2 === 1);

/** The tree and the state with a fault that came with one of the repairs, seen by one of the checks. */
function withFault(tree: Tree, state: JobState, seed: number): [Tree, JobState] {
  const at = 1 + (seed % Math.max(1, state.repairs.length));
  const id = `k${seed % 5}`;
  const worst = tree.checks[id]!.results.at(-1)!.id;
  const bringing = { repair: 1, repaired: 'c0', found: { check: id, result: worst } };
  return [withBrought(tree, bringing), { ...state, brought: [{ cause: broughtBy(1), at }] }];
}

test('findings of what comes and goes count as one of a copy of their check each', () => {
  fc.assert(
    fc.property(anySeed, fc.integer({ min: 1, max: 5 }), (seed, causes) => {
      const tree = randomTree(seed, { causes, checks: 5, links: 0.5 });
      const state = randomState(seed + 1, tree, 9);

      const loose = { ...state, comesAndGoes: someChecks(seed) };
      expect(distance(tree, loose)).toBeLessThanOrEqual(exact);
    }),
    seeded,
  );
});

test('a fault that a repair brought is there from that repair on, and not before', () => {
  fc.assert(
    fc.property(anySeed, fc.integer({ min: 1, max: 5 }), (seed, causes) => {
      const plain = randomTree(seed, { causes, checks: 5, links: 0.5 });
      const [tree, state] = withFault(plain, randomState(seed + 1, plain, 9), seed);

      expect(distance(tree, state)).toBeLessThanOrEqual(exact);
      const both = { ...state, comesAndGoes: someChecks(seed >> 3) };
      expect(distance(tree, both)).toBeLessThanOrEqual(exact);
    }),
    seeded,
  );
});
