import { basename, join } from 'node:path';
import { bad, good, showProblem, type Parsed, type Problem } from '../core/problem.ts';
import { cleanLine, count } from '../core/text.ts';
import { lintTree } from '../core/tree/lint/lint.ts';
import { meant } from '../core/trade/units/nearest.ts';
import type { Tree } from '../core/tree/model.ts';
import type { Library } from '../core/tree/shop.ts';
import { shopFile } from '../store/headings.ts';
import { loadLibrary } from '../store/library.ts';
import { ownLibrary } from '../store/own-jobs.ts';
import { readSettings } from '../store/settings.ts';
import type { Io } from './io.ts';
import {
  absolute,
  fileNamed,
  noTrees,
  sessionsFolder,
  treesFolder,
  type Given,
} from './options.ts';

/** The same as new jobs and legs are to have it: moved to the owner's jobs where the settings ask for that. */
export function libraryForJobs(io: Io, given: Given, library: Library): Library {
  const { files } = io.disk;
  const { ownJobs } = readSettings(files, io.folders.settings);
  const own = ownLibrary(files, library, { folder: sessionsFolder(io, given), ownJobs });
  if (own.trouble !== undefined) io.err(`${cleanLine(showProblem(own.trouble))}\n`);
  return own.library;
}

/** All trees of the folder in use, or why it cannot be used at all. */
export function openLibrary(io: Io, given: Given, file?: string): Parsed<Library> {
  const folder = treesFolder(io, given);
  if (!io.disk.files.exists(folder)) return bad(noTrees(folder));
  return good(loadLibrary(io.disk.files, { folder, shipped: io.folders.shipped, file }));
}

type Opened = { readonly tree: Tree; readonly library: Library };

/**
 * A tree as it was named on the command line, by its id in the folder in use or by its file, with
 * the library it stands in. What is odd about the shop or the id is told beside.
 */
export function openTree(io: Io, given: Given, word: string): Parsed<Opened> {
  const file = fileNamed(io, word);
  const opened = openLibrary(io, given, file);
  if (opened.kind === 'bad') return opened;
  const library = opened.value;
  const tree = file === undefined ? treeNamed(io, word, library) : treeOfFile(file, library);
  if (tree.kind === 'bad') return tree;
  const odd = ({ code, file: from = '', value }: Problem): boolean =>
    basename(from) === shopFile || (code === 'tree-twice' && value === tree.value.id);
  for (const problem of library.problems.filter(odd))
    io.err(`${cleanLine(showProblem(problem))}\n`);
  return good({ tree: tree.value, library });
}

/** What "trees check" would say of a tree that is walked all the same, as one line; undefined for a sound one. */
export function oddityOf(tree: Tree, { trees }: Library): string | undefined {
  const problems = lintTree(
    tree,
    tree.id,
    trees.map(({ id }) => id),
  );
  const [first] = problems;
  return first === undefined
    ? undefined
    : `"droplight trees check" finds ${count(problems.length, 'thing')} wrong with this tree; the first: ${showProblem(first)}`;
}

/** The tree of a file that the library was loaded with. */
function treeOfFile(path: string, { trees, problems }: Library): Parsed<Tree> {
  const own = problems.filter(({ file }) => file === path);
  const [tree] = trees;
  return own.length > 0 || tree === undefined ? { kind: 'bad', problems: own } : good(tree);
}

/** The tree of that id; when its file has problems, these are told rather than that it is missing. */
function treeNamed(io: Io, id: string, { trees, problems }: Library): Parsed<Tree> {
  const tree = trees.find((one) => one.id === id);
  if (tree !== undefined) return good(tree);
  const broken = problems.filter(({ file = '' }) => basename(file) === `${id}.json`);
  if (broken.length > 0) return { kind: 'bad', problems: broken };
  const names = trees.map((one) => one.id);
  const here = io.disk.files.exists(join(absolute(io, '.'), `${id}.json`));
  return bad({
    code: 'unknown-tree',
    value: id,
    message: `There is no tree "${id}".`,
    mend: here
      ? `There is a file ${id}.json here: name it so, with its ".json".`
      : `${meant(id, names)} "droplight trees list" shows all; one of your own is named by its file, such as my-complaint.json, or found with --trees DIR.`,
  });
}
