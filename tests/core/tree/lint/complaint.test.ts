import { expect, test } from 'vitest';
import { lintComplaint } from '../../../../src/core/tree/lint/complaint.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';

const asFormatTwo = (tree: Tree): Tree => ({ ...tree, format: 2 });

test('a cause without a row in the test of the complaint is told in format 2', () => {
  const tree = withCheck('lamp', { points: { fuse: [0.1, 0.9] } });

  expect(toldBy(lintComplaint, tree)).toEqual([]);
  expect(toldBy(lintComplaint, asFormatTwo(tree))).toEqual([
    'complaint-row-missing checks.lamp.shows-with.wire',
  ]);
});

test('"always the last" is a row too', () => {
  const tree = withCheck('lamp', { points: { fuse: [0.1, 0.9], wire: [0, 1] } });

  expect(toldBy(lintComplaint, asFormatTwo(tree))).toEqual([]);
});

test("the complaint's own test has no background", () => {
  expect(toldBy(lintComplaint, withCheck('lamp', { background: [0.9, 0.1] }))).toEqual([
    'complaint-background checks.lamp.background',
  ]);
});
