import { cleanLine } from '../../core/text.ts';
import { bad, good, showProblem, type Parsed } from '../../core/problem.ts';
import { parseJson } from '../../core/tree/json/read.ts';
import { parseTreeValue } from '../../core/tree/parse.ts';
import { printTable, withTable, type TreeFile } from '../../core/tree/writing/table.ts';
import { printTree } from '../../core/tree/written/print.ts';
import { readText } from '../../store/library.ts';
import { done, type Ended, type Io } from '../io.ts';
import { join } from 'node:path';
import { rewriteTree } from './rewrite.ts';
import { absolute, fileNamed, treesFolder, wrongUse, type Given } from '../options.ts';

const use = 'droplight trees table TREE [--from TABLE.csv]';

/** `droplight trees table TREE [--from TABLE.csv]`: the numbers of a tree as a spreadsheet edits them. */
export function tableOfTree(io: Io, given: Given, [word]: readonly string[]): Ended {
  if (word === undefined) return wrongUse('A table wants one tree.', use);
  const path = fileNamed(io, word) ?? join(treesFolder(io, given), `${word}.json`);
  const read = readTree(io, path);
  if (read.kind === 'bad') return read;
  const from = given.text('from');
  if (from === undefined) {
    io.out(printTable(read.value.file));
    return done;
  }
  const csv = readText(io.disk.files, absolute(io, from));
  if (csv.kind === 'bad') return csv;
  const changed = withTable(read.value.file, csv.value);
  if (changed.kind === 'bad') {
    for (const problem of changed.problems) io.err(`${cleanLine(showProblem(problem))}\n`);
    return good(2);
  }
  const tree = parseTreeValue(changed.value, path);
  return tree.kind === 'bad'
    ? tree
    : replace(io, path, { old: read.value.text, file: changed.value });
}

function readTree(
  io: Io,
  path: string,
): Parsed<{ readonly text: string; readonly file: TreeFile }> {
  const text = readText(io.disk.files, path);
  if (text.kind === 'bad') return text;
  const json = parseJson(text.value, path);
  if (json.kind === 'bad') return json;
  const tree = parseTreeValue(json.value, path);
  if (tree.kind === 'bad') return tree;
  if (tree.value.format === 1)
    return bad({
      code: 'table-format',
      file: path,
      message: 'The numbers of a tree of format 1 stand by position.',
      mend: `Bring them under names first: droplight trees upgrade ${path}`,
    });
  return good({ text: text.value, file: json.value as TreeFile });
}

/** Writes the tree with the old text beside it; where nothing changed, nothing is written. */
function replace(io: Io, path: string, { old, file }: { old: string; file: TreeFile }): Ended {
  const json = parseJson(old, path);
  if (json.kind === 'good' && JSON.stringify(json.value) === JSON.stringify(file)) {
    io.out('The table says what the tree says: nothing was written.\n');
    return done;
  }
  const rewritten = rewriteTree(io, path, { old, text: printTree(file) });
  if (rewritten.kind === 'bad') return rewritten;
  io.out(`${path}\n    what it was: ${rewritten.value}\n`);
  return done;
}
