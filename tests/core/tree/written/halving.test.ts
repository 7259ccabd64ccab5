import { describe, expect, test } from 'vitest';
import { halve, type Halves } from '../../../../src/core/tree/written/halving.ts';

/** Probes until each branch is known, by its id. */
function probes(halves: Halves, before = 0): readonly (readonly [string, number])[] {
  if (halves.kind === 'one') return [[halves.leaf, before]];
  return [...probes(halves.here, before + 1), ...probes(halves.elsewhere, before + 1)];
}

const leaves = (weights: readonly number[], minutes = 0) =>
  weights.map((weight, index) => ({ id: `b${index}`, weight, minutes }));
describe('parting half of what is open', () => {
  test.each([2, 3, 4, 7, 8, 15, 16, 31])('finds one of %i alike in their logarithm', (many) => {
    const counts = probes(halve(leaves(Array.from({ length: many }, () => 1)), 3));

    expect(counts.length).toBe(many);
    expect(Math.max(...counts.map(([, count]) => count))).toBe(Math.ceil(Math.log2(many)));
  });

  test('takes what is likely first, and what is long last', () => {
    const likely = new Map(probes(halve(leaves([60, 1, 1, 1, 1]), 3)));
    const long = halve([...leaves([1, 1, 1]), { id: 'long', weight: 1, minutes: 60 }], 3);

    expect(likely.get('b0')).toBe(1);
    expect(JSON.stringify(long)).not.toContain('"parted":["long"');
  });

  test('never parts what stands for none of them', () => {
    const parted = JSON.stringify(halve(leaves([1, 1, 1, 90]), 3, 'b3'));

    expect(parted).not.toMatch(/"parted":\[[^\]]*"b3"/);
  });

  test('is as cheap as the best of all ways to part five', () => {
    const weights = [7, 1, 4, 2, 9];
    const all = leaves(weights, 1);
    const best = (from: number, to: number): number => {
      if (to - from === 1) return 0;
      const range = weights.slice(from, to);
      const total = range.reduce((sum, one) => sum + one, 0);
      const cuts = range.slice(1).map((_, index) => from + index + 1);
      return Math.min(
        ...cuts.map(
          (cut) => total * (3 + Math.min(cut - from, to - cut)) + best(from, cut) + best(cut, to),
        ),
      );
    };
    const cost = (halves: Halves): number => {
      if (halves.kind === 'one') return 0;
      const weigh = (ids: readonly string[]) =>
        ids.reduce((sum, id) => sum + (all.find((leaf) => leaf.id === id)?.weight ?? 0), 0);
      const own = weigh(halves.among) * (3 + halves.parted.length);
      return own + cost(halves.here) + cost(halves.elsewhere);
    };

    expect(cost(halve(all, 3))).toBeCloseTo(best(0, 5), 9);
  });
});
