import { bad, good, type Parsed } from '../core/problem.ts';
import { loadLibrary, type Library } from '../store/library.ts';
import type { Io } from './io.ts';
import { noTrees, treesFolder, type Given } from './options.ts';

/** All trees of the folder in use, or why it cannot be used at all. */
export function openLibrary(io: Io, given: Given): Parsed<Library> {
  const folder = treesFolder(io, given);
  if (!io.disk.files.exists(folder)) return bad(noTrees(folder));
  return good(loadLibrary(io.disk.files, folder, io.folders.shipped));
}
