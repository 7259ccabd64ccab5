import type { Parsed } from '../../core/problem.ts';
import { parseJson } from '../../core/tree/json/read.ts';
import { parseTreeValue } from '../../core/tree/parse.ts';
import { printTree } from '../../core/tree/written/print.ts';
import { upgrade } from '../../core/tree/written/upgrade.ts';
import { readText } from '../../store/library.ts';
import { done, type Ended, type Io } from '../io.ts';
import { absolute, wrongUse, type Given } from '../options.ts';
import { rewriteTree } from './rewrite.ts';

/** `droplight trees upgrade FILES`: each in the words of format 2, the old text beside it. */
export function upgradeTrees(io: Io, _: Given, words: readonly string[]): Ended {
  if (words.length === 0) return wrongUse('No file is named.', 'droplight trees upgrade FILES');
  for (const word of words) {
    const path = absolute(io, word);
    const upgraded = upgradeFile(io, path);
    if (upgraded.kind === 'bad') return upgraded;
    io.out(`${path}\n    what it was: ${upgraded.value}\n`);
  }
  return done;
}

/** @returns where the old text stands now */
function upgradeFile(io: Io, path: string): Parsed<string> {
  const { files } = io.disk;
  const text = readText(files, path);
  if (text.kind === 'bad') return text;
  const file = parseJson(text.value, path);
  if (file.kind === 'bad') return file;
  const tree = parseTreeValue(file.value, path);
  if (tree.kind === 'bad') return tree;
  return rewriteTree(io, path, {
    old: text.value,
    text: printTree(upgrade(file.value as Record<string, unknown>, tree.value)),
  });
}
