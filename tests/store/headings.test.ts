import { expect, test } from 'vitest';
import { loadHeadings } from '../../src/store/headings.ts';
import { byGroup } from '../../src/core/tree/groups.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';
import { smallTreeData } from '../helpers/tree.ts';

const small = smallTreeData();

test('the shipped trees are listed as they are when read through', () => {
  const { trees } = loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' });

  expect(loadHeadings(nodeFiles, 'trees')).toEqual({
    headings: byGroup(trees).map(({ id, title, group }) => ({ id, title, group })),
    problems: [],
  });
});

test('a title that stands below long texts is found all the same', () => {
  const { id, title, ...rest } = small;
  const text = JSON.stringify({ ...rest, fits: ['x'.repeat(5000)], id, title });
  const files = new MemoryFiles({ 'mine/a.json': text });

  expect(loadHeadings(files, 'mine').headings).toEqual([{ id, title }]);
});

test('a file without them, and one that the system refuses, are told beside the others', () => {
  const files = new MemoryFiles({
    'mine/a.json': '{"format":1,',
    'mine/b.json': JSON.stringify(small),
    'mine/shop.json': '{}',
    'mine/tree.schema.json': '{}',
  });
  const { headings, problems } = loadHeadings(files, 'mine');

  expect(headings).toHaveLength(1);
  expect(problems.map(({ code, file }) => [code, file])).toEqual([['no-heading', 'mine/a.json']]);

  files.refuse = ({ name }) => (name === 'readStart' ? 'EACCES' : undefined);
  expect(loadHeadings(files, 'mine').problems.map(({ code }) => code)).toEqual([
    'EACCES',
    'EACCES',
  ]);
});

test('two trees with one id are both listed, and the second is told', () => {
  const text = JSON.stringify(small);
  const files = new MemoryFiles({ 'mine/a.json': text, 'mine/b.json': text });
  const { headings, problems } = loadHeadings(files, 'mine');

  expect(headings).toHaveLength(2);
  expect(problems.map(({ code, file }) => [code, file])).toEqual([['tree-twice', 'mine/b.json']]);
});
