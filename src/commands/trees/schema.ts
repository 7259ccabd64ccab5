import { treeSchema } from '../../core/tree/schema/tree-schema.ts';
import { loadShops } from '../../store/library.ts';
import { done, fail, printJson, type Ended, type Io } from '../io.ts';
import { treesFolder, type Given } from '../options.ts';

/** `droplight trees schema [--trees DIR]`: the tree format, with the ids of the shop in use. */
export function printSchema(io: Io, given: Given): Ended {
  const { shop, problems } = loadShops(io.disk.files, [io.folders.shipped, treesFolder(io, given)]);
  for (const problem of problems) fail(io, problem);
  printJson(io, treeSchema(shop));
  return done;
}
