import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { bad, good, type Parsed, type Problem } from '../../core/problem.ts';
import { skeleton } from '../../core/tree/skeleton.ts';
import { Id } from '../../core/tree/basics.ts';
import { treeSchema } from '../../core/tree/schema/tree-schema.ts';
import { attempt } from '../../store/files.ts';
import { loadHeadings } from '../../store/headings.ts';
import { loadShops } from '../../store/library.ts';
import { writeWhole } from '../../store/whole-file.ts';
import { done, type Ended, type Io } from '../io.ts';
import { absolute, treesFolder, type Given } from '../options.ts';

/** What an editor completes and checks by, beside the trees. */
const schemaFile = 'tree.schema.json';

/**
 * `droplight trees new [FILE]`: a tree to begin with, printed, or written to a file not there yet,
 * with the schema beside it that it points to.
 */
export function newTree(io: Io, given: Given, [word]: readonly string[]): Ended {
  const id = basename(word ?? 'my-complaint', '.json');
  const text = `${JSON.stringify(skeleton(id), null, 2)}\n`;
  if (word === undefined) {
    io.out(text);
    return done;
  }
  const wrong = wrongName(io, given, id);
  if (wrong !== undefined) return bad(wrong);
  const written = writeFirst(io, foldersFor(io, given, word), `${id}.json`, text);
  if (written.kind === 'bad') return written;
  io.out(`${written.value}\n`);
  return done;
}

function wrongName(io: Io, given: Given, id: string): Problem | undefined {
  if (!Id.safeParse(id).success)
    return {
      code: 'wrong-id',
      value: id,
      message: `"${id}" cannot be the id of a tree, which is the name of its file.`,
      mend: 'Use lower-case letters, digits and hyphens: droplight trees new my-complaint.json',
    };
  const folder = treesFolder(io, given);
  const { headings } = loadHeadings(io.disk.files, folder);
  if (!headings.some((one) => one.id === id)) return undefined;
  return {
    code: 'tree-there',
    value: id,
    message: `There is a tree "${id}" already, in ${folder}.`,
    mend: 'Choose another name.',
  };
}

/**
 * Where a new tree goes, the best place first: into the folder that the word or `--trees` names.
 * Else among the trees of the clone that one stands in, where its id is found; a program that is
 * installed elsewhere keeps its folder to itself, and the tree goes into the current one.
 */
function foldersFor(io: Io, given: Given, word: string): readonly string[] {
  const { current, shipped } = io.folders;
  if (/[/\\]/.test(word)) return [dirname(absolute(io, word))];
  if (given.text('trees') !== undefined) return [treesFolder(io, given)];
  const way = relative(current, shipped);
  const within = !isAbsolute(way) && !/^\.\.|node_modules/.test(way.split(sep).join('/'));
  return within ? [shipped, current] : [current];
}

/** Writes into the first of the folders that takes it; a file of that name is never written over. */
function writeFirst(
  io: Io,
  [folder = io.folders.current, ...others]: readonly string[],
  name: string,
  text: string,
): Parsed<string> {
  const { files } = io.disk;
  const path = join(folder, name);
  if (files.exists(path))
    return bad({
      code: 'file-there',
      file: path,
      message: 'There is a file of this name already.',
      mend: 'Choose another name.',
    });
  const written = attempt(path, () => writeWhole(files, path, text));
  if (written.kind === 'bad')
    return others.length > 0 ? writeFirst(io, others, name, text) : written;
  const schema = join(folder, schemaFile);
  const copied = attempt(schema, () => {
    if (!files.exists(schema)) writeWhole(files, schema, schemaText(io, folder));
  });
  return copied.kind === 'bad' ? copied : good(path);
}

/** The schema with the ids of our shop and of the one that lies there. */
function schemaText({ disk, folders }: Io, folder: string): string {
  const { shop } = loadShops(disk.files, [folders.shipped, folder]);
  return `${JSON.stringify(treeSchema(shop), null, 2)}\n`;
}
