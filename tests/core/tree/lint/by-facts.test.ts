import { expect, test } from 'vitest';
import { lintByFacts } from '../../../../src/core/tree/lint/by-facts.ts';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { toldBy, withCheck } from '../../../helpers/lint.ts';

const fuseOn = (choke: string, tree: Tree): Tree => {
  const { fuse } = tree.causes;
  if (fuse === undefined) throw new Error('no fuse');
  return { ...tree, causes: { ...tree.causes, fuse: { ...fuse, when: { choke } } } };
};

test('a cause whose only check is left out on the vehicles that have it is told', () => {
  const look = withCheck('look', { when: { choke: 'manual' } });

  expect(toldBy(lintByFacts, fuseOn('automatic', look))).toEqual(['cause-unseen causes.fuse.when']);
  expect(toldBy(lintByFacts, fuseOn('manual', look))).toEqual([]);
  expect(toldBy(lintByFacts, withCheck('look', {}))).toEqual([]);
});
