import { expect, test } from 'vitest';
import { takenWords } from '../../../src/core/account/clauses/apart.ts';

const off = (bags: readonly (number | undefined)[]) =>
  takenWords(
    'we',
    bags.map((bag, at) => ({
      kind: 'part-off' as const,
      part: `part ${at + 1}`,
      ...(bag !== undefined && { bag }),
    })),
    { when: '' },
  );

test('bags in a row are told as such', () => {
  expect(off([3, 4, 5, 6, 7])).toBe(
    'We took off five parts, from the part 1 to the part 5, each in a bag of its own (3 to 7).',
  );
});

test('where a part has none, or a number is left out, nothing is said of each', () => {
  expect(off([3, undefined, 5, 6, 7])).toMatch(/ \(bags 3, 5, 6, 7\)\.$/);
  expect(off([3, 4, 6, 7, 8])).toMatch(/ \(bags 3, 4, 6, 7, 8\)\.$/);
  expect(off([undefined, undefined, undefined, undefined, undefined])).not.toContain('bag');
});
