import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { accountOf } from '../../../src/commands/write.ts';
import { treeOf } from '../../../src/core/session/header/walked-tree.ts';
import { fitTree } from '../../../src/core/tree/fit.ts';
import { readSession } from '../../../src/store/recover.ts';
import { shippedTree } from '../../helpers/library.ts';

// A generator was called otherwise in ids once. This session was recorded then; its header carries
// its own tree, so that it is read, fitted and told by the ids it was recorded with.
const name = 'charging-with-old-ids';
const read = readSession(readFileSync(`tests/fixtures/old-sessions/${name}.jsonl`), name);
if (read.kind === 'bad') throw new Error('the old session cannot be read');
const { value: old } = read;
const written = old.header.trees[old.header.tree];
if (written === undefined) throw new Error('its header has no tree');
const ownTree = treeOf(written);

test('a session recorded under older ids is read whole, by its own tree', () => {
  expect(old.damage).toEqual([]);
  expect(Object.keys(ownTree.causes)).toContain('dynamo');
  expect(Object.keys(shippedTree('charging').causes)).not.toContain('dynamo');
});

test('its tree still answers to the facts of its own time', () => {
  const { causes, checks } = fitTree(ownTree, { charging: 'dynamo' });

  expect(Object.keys(causes)).toContain('dynamo');
  expect(Object.keys(causes)).not.toContain('alt-brush');
  expect(Object.keys(checks)).toContain('dynamo-df');
});

test('its account is written as ever', () => {
  const { markdown } = accountOf(old, { pictures: `${name}.pictures` });

  expect(markdown).toContain('Not charging');
  expect(markdown).not.toContain('undefined');
});
