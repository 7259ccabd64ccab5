import { bad, good, type Parsed } from '../core/problem.ts';
import { meant } from '../core/trade/units/nearest.ts';
import type { Tree } from '../core/tree/model.ts';
import type { Library } from '../core/tree/shop.ts';
import { loadLibrary } from '../store/library.ts';
import type { Io } from './io.ts';
import { noTrees, treesFolder, type Given } from './options.ts';

/** All trees of the folder in use, or why it cannot be used at all. */
export function openLibrary(io: Io, given: Given): Parsed<Library> {
  const folder = treesFolder(io, given);
  if (!io.disk.files.exists(folder)) return bad(noTrees(folder));
  return good(loadLibrary(io.disk.files, folder, io.folders.shipped));
}

/** A tree of the folder in use, with the library it stands in. */
export function openTree(io: Io, given: Given, id: string) {
  const library = openLibrary(io, given);
  if (library.kind === 'bad') return library;
  const tree = treeNamed(id, library.value);
  return tree.kind === 'bad' ? tree : good({ tree: tree.value, library: library.value });
}

/** The tree of that id; when its file has problems, these are told rather than that it is missing. */
export function treeNamed(id: string, library: Library): Parsed<Tree> {
  const tree = library.trees.find((one) => one.id === id);
  if (tree !== undefined) return good(tree);
  const broken = library.problems.filter(({ file }) => file?.endsWith(`${id}.json`));
  if (broken.length > 0) return { kind: 'bad', problems: broken };
  const names = library.trees.map((one) => one.id);
  return bad({
    code: 'unknown-tree',
    value: id,
    message: `There is no tree "${id}".`,
    mend: `${meant(id, names)} "droplight trees list" shows all.`,
  });
}
