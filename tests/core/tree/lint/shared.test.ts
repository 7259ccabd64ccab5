import { expect, test } from 'vitest';
import { lintLibrary } from '../../../../src/core/tree/lint/shared.ts';
import type { Check, Tree } from '../../../../src/core/tree/model.ts';
import { shippedTrees } from '../../../helpers/library.ts';
import { withCheck } from '../../../helpers/lint.ts';
import { smallTree } from '../../../helpers/tree.ts';

const beside = (tree: Tree) =>
  lintLibrary([
    { file: 'a.json', tree: smallTree() },
    { file: 'b.json', tree: { ...tree, id: 'other' } },
  ]);

test('two trees that share a check must show the same results in it', () => {
  const one = smallTree();
  const { look, ...rest } = one.checks;
  if (look === undefined) throw new Error('no look');
  const turned = { ...look, results: look.results.toReversed() };
  const other: Tree = { ...one, id: 'other', checks: { ...rest, look: turned } };
  const files = [
    { file: 'a.json', tree: one },
    { file: 'b.json', tree: other },
  ];

  expect(lintLibrary(files).map(({ code, file, path }) => [code, file, path])).toEqual([
    ['shared-results', 'b.json', 'checks.look.results'],
  ]);
});

test('two files with one tree are told', () => {
  const files = [
    { file: 'a.json', tree: smallTree() },
    { file: 'b.json', tree: smallTree() },
  ];

  expect(lintLibrary(files).map(({ code, file }) => [code, file])).toEqual([
    ['tree-twice', 'b.json'],
  ]);
});

test.each<[what: string, change: Partial<Check>, path: string]>([
  ['question', { ask: 'Volts at the lamp, held for a minute' }, 'checks.volts.ask'],
  [
    'unit',
    { reading: { quantity: 'voltage', unit: 'mV', plausible: [0, 16] } },
    'checks.volts.reading.unit',
  ],
  [
    'bands',
    {
      results: [
        { id: 'full', label: 'full', from: 11 },
        { id: 'low', label: 'low', from: 2, below: 11 },
        { id: 'dead', label: 'dead', below: 2 },
      ],
    },
    'checks.volts.results',
  ],
  ['station', { feed: { station: 'stud', load: [], reads: 'volts' } }, 'checks.volts.feed'],
  ['standing', { standing: { key: 'off' } }, 'checks.volts.standing'],
])('a shared check with another %s is told', (what, change, path) => {
  const [problem, ...others] = beside(withCheck('volts', change));

  expect(others).toEqual([]);
  expect(problem).toMatchObject({ code: 'shared-differs', file: 'b.json', path });
  expect(problem?.message).toContain(`another content (${what})`);
});

test('other steps, another source or another warmth make no other check', () => {
  const change = {
    how: ['Otherwise.'],
    source: 'a book',
    standing: { key: 'run', heat: 'hot' },
  } as const;

  expect(beside(withCheck('volts', { ...change, how: [...change.how] }))).toEqual([]);
});

test('the shipped trees share checks, and each means one thing', () => {
  const files = shippedTrees().map((tree) => ({ file: `${tree.id}.json`, tree }));
  const ids = files.flatMap(({ tree }) => Object.keys(tree.checks));

  expect(ids.length - new Set(ids).size).toBeGreaterThan(20);
  expect(lintLibrary(files)).toEqual([]);
});
