import { basename, join } from 'node:path';
import type { Problem } from '../../core/problem.ts';
import type { TreeFile } from '../../core/tree/lint/shared.ts';

/** Trees whose file is not called by their id: a tree is found by its file's name. */
export const wrongNames = (files: readonly TreeFile[]): readonly Problem[] =>
  files
    .filter(({ file, tree }) => /\.json$/i.test(file) && basename(file) !== `${tree.id}.json`)
    .map(({ file, tree }) => ({
      code: 'file-name',
      file,
      path: 'id',
      value: tree.id,
      message: `The tree is called "${tree.id}", its file ${basename(file)}.`,
      mend: `Call the file ${tree.id}.json, or give the tree the id that its file is called by.`,
    }));

/** Files meant as trees that no command finds, since a word was put behind their ending. */
export const wrongEndings = (paths: readonly string[]): readonly Problem[] =>
  paths
    .filter((path) => /\.json\.[a-z]+$/i.test(path))
    .map((file) => ({
      code: 'file-ending',
      file,
      message: `The file does not end in .json, so that it is not found among the trees.`,
      mend: `Call it ${basename(file).replace(/\.[a-z]+$/i, '')}; the system may hide the end of its name.`,
    }));

/** A folder without any tree. */
export const nothingIn = (folder: string): Problem => ({
  code: 'no-trees-here',
  file: join(folder),
  message: 'There is no tree in this folder.',
  mend: '"droplight trees new my-complaint.json" begins one; --trees DIR names another folder.',
});
