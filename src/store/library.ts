import { join } from 'node:path';
import { feedProblems } from '../core/feed/fill.ts';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';
import type { Tree } from '../core/tree/model.ts';
import { maxLength, tooLarge } from '../core/tree/json.ts';
import { parseShop, parseTree } from '../core/tree/parse.ts';
import { emptyShop, type Shop } from '../core/tree/shop.ts';
import { storeError, type Files } from './files.ts';

/** The trees of a folder, the shop they share, and what is wrong with those that could not be read. */
export type Library = {
  readonly trees: readonly Tree[];
  readonly shop: Shop;
  readonly problems: readonly Problem[];
};

/** The file that the trees of a folder share. */
export const shopFile = 'shop.json';

/**
 * Loads all trees of a folder.
 * @param shipped the folder of our own trees: its shop serves a folder that has none
 */
export function loadLibrary(files: Files, folder: string, shipped: string): Library {
  const shop = loadShop(files, files.exists(join(folder, shopFile)) ? folder : shipped);
  const loaded = files
    .list(folder)
    .filter(isTreeFile)
    .map((name) => loadTree(files, join(folder, name), goodOr(shop, emptyShop)));
  return {
    trees: loaded.flatMap((tree) => (tree.kind === 'good' ? [tree.value] : [])),
    shop: goodOr(shop, emptyShop),
    problems: [shop, ...loaded].flatMap((one) => (one.kind === 'bad' ? one.problems : [])),
  };
}

export const isTreeFile = (name: string): boolean =>
  name.endsWith('.json') && name !== shopFile && !name.endsWith('.schema.json');

export function loadTree(files: Files, path: string, shop: Shop): Parsed<Tree> {
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

/** The text of a file of the library; one far too large is not even read. */
export function readText(files: Files, path: string): Parsed<string> {
  try {
    const size = files.sizeOf(path);
    if (size > maxLength) return bad(tooLarge(size, path));
    return good(new TextDecoder().decode(files.read(path)));
  } catch (error) {
    const { code, message, mend } = storeError(error, path);
    return { kind: 'bad', problems: [{ code, file: path, message, mend }] };
  }
}

const goodOr = <T>(parsed: Parsed<T>, otherwise: T): T =>
  parsed.kind === 'good' ? parsed.value : otherwise;
