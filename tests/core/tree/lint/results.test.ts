import { expect, test } from 'vitest';
import { lintResults } from '../../../../src/core/tree/lint/results.ts';
import type { Check, Tree } from '../../../../src/core/tree/model.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';
import { smallTree } from '../../../helpers/tree.ts';

/** The look of the small tree with results of these labels, each leading to the volts. */
const labeled = (...labels: readonly string[]): Tree =>
  withCheck('look', {
    results: labels.map((label, index) => ({ id: `r${index}`, label, next: 'volts' })),
    background: [1 - 0.01 * (labels.length - 1), ...labels.slice(1).map(() => 0.01)],
    points: {},
  });

test.each([
  ['lights', 'dead', 'dim'],
  ['squirts', 'none', 'weak'],
  ['cranks well', 'no sign of life', 'cranks slowly'],
  ['loud', 'silent', 'faint'],
])('a result that hides the milder one after it is told: %s, %s, %s', (...labels) => {
  expect(toldBy(lintResults, labeled(...labels))).toEqual([
    'masking-not-last checks.look.results[1]',
  ]);
});

test.each([
  ['lights', 'dim', 'dead'],
  ['none', 'a little', 'much'],
  ['squirts', 'none', 'wet or dribbling'],
  ['everything alive', 'dead still', 'fuse blows'],
  ['lights', 'none', 'dead'],
])('one that is last, healthy or outshone is not: %s, %s, %s', (...labels) => {
  expect(toldBy(lintResults, labeled(...labels))).toEqual([]);
});

/** The look with a middle result that leads there, and rows for it. */
const named = (change: Partial<Check>): readonly string[] =>
  toldBy(
    lintResults,
    withCheck('look', {
      results: [
        { id: 'whole', label: 'whole', next: 'volts' },
        { id: 'dull', label: 'dull', next: 'cause:wire' },
        { id: 'burnt', label: 'burnt', next: 'cause:fuse' },
      ],
      background: [0.88, 0.1, 0.02],
      points: { fuse: [0.05, 0.05, 0.9], wire: [0.6, 0.38, 0.02] },
      ...change,
    }),
  );

test('a bad result that names a cause which speaks no more for it than a sound vehicle is told', () => {
  const told = ['named-by-less checks.look.results[1].next'];

  expect(named({})).toEqual([]);
  expect(named({ points: { fuse: [0.05, 0.05, 0.9], wire: [0.9, 0.08, 0.02] } })).toEqual(told);
  expect(named({ points: { fuse: [0.05, 0.05, 0.9] } })).toEqual(told);
});

test('a bad result that goes on as the healthier ones do names by what is ruled out', () => {
  const results = [
    { id: 'whole', label: 'whole', next: 'cause:wire' },
    { id: 'dull', label: 'dull', next: 'cause:wire' },
    { id: 'burnt', label: 'burnt', next: 'cause:fuse' },
  ];
  const points = { fuse: [0.05, 0.05, 0.9] };

  expect(named({ results, points })).toEqual([]);
  expect(toldBy(lintResults, smallTree())).toEqual([]);
});
