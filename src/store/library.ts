import { join } from 'node:path';
import { feedProblems } from '../core/feed/fill.ts';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';
import type { Tree } from '../core/tree/model.ts';
import { maxLength, tooLarge } from '../core/tree/json.ts';
import { idsTwice } from '../core/tree/lint/shared.ts';
import { parseShop, parseTree } from '../core/tree/parse.ts';
import { emptyShop, type Library, type Shop } from '../core/tree/shop.ts';
import { attempt, type Files } from './files.ts';
import { isTreeFile, shopFile } from './headings.ts';

/**
 * Loads all trees of a folder; of two with one id the first is kept.
 * @param shipped the folder of our own trees: its shop serves a folder that has none
 */
export function loadLibrary(files: Files, folder: string, shipped: string): Library {
  const shop = loadShop(files, files.exists(join(folder, shopFile)) ? folder : shipped);
  const loaded = files
    .list(folder)
    .filter(isTreeFile)
    .map((name) => {
      const file = join(folder, name);
      return { file, tree: loadTree(files, file, goodOr(shop, emptyShop)) };
    });
  const named = loaded.flatMap(({ file, tree }) =>
    tree.kind === 'good' ? [{ file, id: tree.value.id, tree: tree.value }] : [],
  );
  const twice = idsTwice(named);
  return {
    trees: named.filter((_, at) => twice[at] === undefined).map(({ tree }) => tree),
    shop: goodOr(shop, emptyShop),
    problems: [
      ...[shop, ...loaded.map(({ tree }) => tree)].flatMap(problemsOf),
      ...twice.filter((one) => one !== undefined),
    ],
  };
}

function loadTree(files: Files, path: string, shop: Shop): Parsed<Tree> {
  const text = readText(files, path);
  if (text.kind === 'bad') return text;
  const tree = parseTree(text.value, path, shop);
  const problems = tree.kind === 'good' ? feedProblems(tree.value, path) : [];
  return problems.length > 0 ? { kind: 'bad', problems } : tree;
}

export function loadShop(files: Files, folder: string): Parsed<Shop> {
  const path = join(folder, shopFile);
  const text = readText(files, path);
  return text.kind === 'bad' ? text : parseShop(text.value, path);
}

/** The text of a file of the library; one far too large is not read through. */
export function readText(files: Files, path: string): Parsed<string> {
  const read = attempt(path, () => {
    const bytes = files.readStart(path, maxLength + 1);
    if (bytes.length > maxLength) return bad(tooLarge(files.sizeOf(path), path));
    return good(new TextDecoder().decode(bytes));
  });
  return read.kind === 'bad' ? read : read.value;
}

const problemsOf = (one: Parsed<unknown>): readonly Problem[] =>
  one.kind === 'bad' ? one.problems : [];

const goodOr = <T>(parsed: Parsed<T>, otherwise: T): T =>
  parsed.kind === 'good' ? parsed.value : otherwise;
