import { describe, expect, test } from 'vitest';
import { loadLibrary } from '../../src/store/library.ts';
import { isTreeFile } from '../../src/store/headings.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';
import { planted } from '../helpers/plant.ts';
import { smallShop, smallTreeData } from '../helpers/tree.ts';

const shop = JSON.stringify(smallShop);
const small = JSON.stringify(smallTreeData());
const told = (library: ReturnType<typeof loadLibrary>) =>
  library.problems.map(({ code, file, path }) => [code, file, path]);

describe('a folder of trees', () => {
  test('that we ship loads without a problem', () => {
    const library = loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' });

    expect(told(library)).toEqual([]);
    expect(library.trees.length).toBeGreaterThanOrEqual(2);
  });

  test('without a shop uses the shipped one', () => {
    const files = new MemoryFiles({ 'mine/small.json': small, 'shipped/shop.json': shop });
    const library = loadLibrary(files, { folder: 'mine', shipped: 'shipped' });

    expect(told(library)).toEqual([]);
    expect(library.trees.map(({ id }) => id)).toEqual(['no-light']);
    expect(library.shop).toEqual(smallShop);
  });

  test('adds a shop of its own to the shipped one', () => {
    const files = new MemoryFiles({
      'mine/small.json': small,
      'mine/shop.json': '{"format":1,"tools":{"winch":{"name":"Hand winch"}}}',
      'shipped/shop.json': shop,
    });
    const library = loadLibrary(files, { folder: 'mine', shipped: 'shipped' });

    expect(told(library)).toEqual([]);
    expect(library.shop.tools).toEqual({ ...smallShop.tools, winch: { name: 'Hand winch' } });
  });

  test('tells a broken tree and loads the others', () => {
    const files = new MemoryFiles({
      'mine/a.json': '{',
      'mine/b.json': small,
      'mine/c.json': JSON.stringify(planted(['start', 'nowhere'])),
      'shipped/shop.json': shop,
    });
    const library = loadLibrary(files, { folder: 'mine', shipped: 'shipped' });

    expect(told(library)).toEqual([
      ['not-json', 'mine/a.json', undefined],
      ['unknown-check', 'mine/c.json', 'start'],
    ]);
    expect(library.trees).toHaveLength(1);
  });

  test('tells a tree whose id another has, and keeps the first', () => {
    const files = new MemoryFiles({
      'mine/a.json': small,
      'mine/b.json': small,
      'shipped/shop.json': shop,
    });
    const library = loadLibrary(files, { folder: 'mine', shipped: 'shipped' });

    expect(told(library)).toEqual([['tree-twice', 'mine/b.json', 'id']]);
    expect(library.trees).toHaveLength(1);
  });

  test('tells a tree that the system refuses to read', () => {
    const files = new MemoryFiles({ 'mine/b.json': small, 'shipped/shop.json': shop });
    files.refuse = ({ number, name }) =>
      name === 'readStart' && number > 1 ? 'EACCES' : undefined;

    expect(told(loadLibrary(files, { folder: 'mine', shipped: 'shipped' }))).toEqual([
      ['EACCES', 'mine/b.json', undefined],
    ]);
  });

  test('that is not there has no trees', () => {
    const files = new MemoryFiles({ 'shipped/shop.json': shop });

    expect(loadLibrary(files, { folder: 'nowhere', shipped: 'shipped' })).toEqual({
      trees: [],
      shop: smallShop,
      problems: [],
    });
  });

  test('with a broken shop tells it', () => {
    const files = new MemoryFiles({
      'mine/shop.json': '{"format":2}',
      'shipped/shop.json': shop,
    });

    expect(told(loadLibrary(files, { folder: 'mine', shipped: 'shipped' }))).toEqual([
      ['wrong-shape', 'mine/shop.json', 'format'],
    ]);
  });

  test('that starts with a byte-order mark, as some editors write it, loads', () => {
    const files = new MemoryFiles({ 'mine/b.json': `\ufeff${small}`, 'shipped/shop.json': shop });

    expect(told(loadLibrary(files, { folder: 'mine', shipped: 'shipped' }))).toEqual([]);
  });

  test.each([
    ['no-supply.json', true],
    ['shop.json', false],
    ['tree.schema.json', false],
    ['notes.txt', false],
  ])('%s as a tree: %s', (name, is) => {
    expect(isTreeFile(name)).toBe(is);
  });
});
