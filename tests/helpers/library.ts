import type { Shop } from '../../src/core/tree/shop.ts';
import type { Tree } from '../../src/core/tree/model.ts';
import { loadLibrary } from '../../src/store/library.ts';
import { nodeFiles } from '../../src/store/node-files.ts';

const library = () => loadLibrary(nodeFiles, { folder: 'trees', shipped: 'trees' });

/** The trees that are shipped, as the program loads them. */
export function shippedTrees(): readonly Tree[] {
  const { trees, problems } = library();
  if (problems.length > 0) throw new Error(JSON.stringify(problems, null, 2));
  return trees;
}

export const shippedTree = (id: string): Tree => {
  const tree = shippedTrees().find((one) => one.id === id);
  if (tree === undefined) throw new Error(`no tree ${id}`);
  return tree;
};

export const shippedShop = (): Shop => library().shop;
