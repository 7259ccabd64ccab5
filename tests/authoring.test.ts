import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { checkTree } from '../src/core/reason/plan/check-tree.ts';
import { makeModel } from '../src/core/reason/belief/model.ts';
import { parseTreeValue } from '../src/core/tree/parse.ts';
import { shippedShop, shippedTrees } from './helpers/library.ts';

const page = readFileSync('trees/README.md', 'utf8');
const example = /<!-- authoring example.*-->\n```json\n([^`]*)```/.exec(page)?.[1] ?? '';
const shop = shippedShop();

test('the tree built up in trees/README.md has nothing wrong', () => {
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
