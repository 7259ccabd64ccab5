import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkTree } from '../src/core/reason/plan/check-tree.ts';
import { makeModel } from '../src/core/reason/belief/model.ts';
import { parseTreeValue } from '../src/core/tree/parse.ts';
import { sourceFiles } from './helpers/floors.ts';
import { shippedShop, shippedTrees } from './helpers/library.ts';

const page = readFileSync('DEVELOPERS.md', 'utf8');
const example = /<!-- authoring example.*-->\n```json\n([^`]*)```/.exec(page)?.[1] ?? '';
const shop = shippedShop();

test('the tree built up in DEVELOPERS.md has nothing wrong', () => {
  const trees = shippedTrees().map(({ id }) => id);

  const checked = checkTree(example, { file: 'horn-silent.json', shop, trees });

  expect(checked.tree?.id).toBe('horn-silent');
  expect([checked.problems, checked.doubts]).toEqual([[], []]);
});

test('what it says of two faults at once is what the model makes of them', () => {
  const tree = parseTreeValue(JSON.parse(example), 'horn-silent.json', shop);
  const model = tree.kind === 'good' ? makeModel(tree.value) : undefined;
  const volts = model?.checks.find(({ id }) => id === 'horn-volts');
  const full = (id: string): number =>
    volts?.links[model?.causes.findIndex((cause) => cause.id === id) ?? -1]?.[0] ?? NaN;

  const both = (volts?.background[0] ?? NaN) * full('fuse') * full('button');

  expect(both).toBeCloseTo((0.02 * 0.06) / 0.93, 12);
  expect(page).toContain('0.02 x 0.06 / 0.93, about 0.0013');
});

test('DEVELOPERS.md names every code of the lint', () => {
  const files = sourceFiles('src/core').filter((file) =>
    /^(tree\/lint|reason\/plan\/soundness)/.test(file),
  );
  const text = files.map((file) => readFileSync(`src/core/${file}`, 'utf8')).join('\n');
  const codes = [...text.matchAll(/code: '([a-z-]+)'|missing\(\s*'([a-z-]+)'/g)].map(
    ([, one, other]) => one ?? other ?? '',
  );

  expect(codes.length).toBeGreaterThan(20);
  expect(codes.filter((code) => !page.includes(code))).toEqual([]);
});
