import fc from 'fast-check';
import { expect, test } from 'vitest';
import { believe } from '../../../../src/core/reason/belief/posterior.ts';
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
