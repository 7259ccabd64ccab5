import { bad, good, type Parsed } from '../core/problem.ts';
import { loadLibrary, type Library } from '../store/library.ts';
import type { Io } from './io.ts';
import { treesFolder, type Given } from './options.ts';

/** All trees of the folder in use, or why it cannot be used at all. */
export function openLibrary(io: Io, given: Given): Parsed<Library> {
  const folder = treesFolder(io, given);
  if (!io.disk.files.exists(folder))
    return bad({
      code: 'no-trees',
      value: folder,
      message: `There is no folder of trees at ${folder}.`,
      mend: 'Give --trees DIR with a folder that is there.',
    });
  return good(loadLibrary(io.disk.files, folder, io.folders.shipped));
}
