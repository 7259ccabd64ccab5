import { dirname, join } from 'node:path';
import { feedProblems } from '../core/feed/fill.ts';
import { bad, problemsOf, type Parsed, type Problem } from '../core/problem.ts';
import type { Tree } from '../core/tree/model.ts';
import { placed } from '../core/tree/json/place.ts';
import { maxLength, tooLarge } from '../core/tree/json/read.ts';
import { idsTwice } from '../core/tree/lint/shared.ts';
import { checkShop, mergeShops } from '../core/tree/own-shop.ts';
import { parseShop, parseTree } from '../core/tree/parse.ts';
import { emptyShop, type Library, type Shop } from '../core/tree/shop.ts';
import { attempt, type Files } from './files.ts';
import { isTreeFile, shopFile } from './headings.ts';
import { textOf } from './text.ts';

/** Where a library is loaded from. */
export type Places = {
  /** The folder of trees in use. */
  readonly folder: string;
  /** The folder of our own trees: its shop serves every folder, which may add to it. */
  readonly shipped: string;
  /** A tree that was named by its file: it comes first, with what the shop beside it adds. */
  readonly file?: string | undefined;
};

/** Loads all trees of a folder; of two with one id the first is kept. */
export function loadLibrary(files: Files, { folder, shipped, file: own }: Places): Library {
  const beside = own === undefined ? [] : [dirname(own)];
  const shops = loadShops(files, [shipped, folder, ...beside]);
  const paths = new Set(own === undefined ? [] : [own]);
  for (const name of files.list(folder).filter(isTreeFile)) paths.add(join(folder, name));
  const loaded = [...paths].map((file) => ({ file, tree: loadTree(files, file, shops.shop) }));
  const named = loaded.flatMap(({ file, tree }) =>
    tree.kind === 'good' ? [{ file, id: tree.value.id, tree: tree.value }] : [],
  );
  const twice = idsTwice(named);
  return {
    trees: named.filter((_, at) => twice[at] === undefined).map(({ tree }) => tree),
    shop: shops.shop,
    problems: [
      ...shops.problems,
      ...loaded.flatMap(({ tree }) => problemsOf(tree)),
      ...twice.filter((one) => one !== undefined),
    ],
  };
}

function loadTree(files: Files, path: string, shop: Shop): Parsed<Tree> {
  const text = readText(files, path);
  if (text.kind === 'bad') return text;
  const tree = parseTree(text.value, path, shop);
  const problems = tree.kind === 'good' ? placed(text.value, feedProblems(tree.value, path)) : [];
  return problems.length > 0 ? { kind: 'bad', problems } : tree;
}

/** The shops of several folders as one. */
type Shops = {
  readonly shop: Shop;
  readonly problems: readonly Problem[];
  /** Each could be read: a name that is not in it is nowhere. */
  readonly whole: boolean;
};

/**
 * The library's shop, and what the shops of further folders add to it, each folder once.
 * @param folders ours first; a further one may be without a shop
 */
export function loadShops(files: Files, folders: readonly string[]): Shops {
  const [first = '', ...more] = [...new Set(folders)].map((folder) => join(folder, shopFile));
  const begun = loadShop(files, first);
  let shop = begun.kind === 'good' ? begun.value : emptyShop;
  let whole = begun.kind === 'good';
  const problems = [...problemsOf(begun)];
  for (const file of more.filter((path) => files.exists(path))) {
    const own = loadShop(files, file);
    problems.push(...problemsOf(own));
    whole &&= own.kind === 'good';
    if (own.kind === 'bad') continue;
    const merged = mergeShops({ file: first, shop }, { file, shop: own.value });
    shop = merged.shop;
    problems.push(...merged.problems);
  }
  return { shop, problems, whole };
}

function loadShop(files: Files, path: string): Parsed<Shop> {
  const text = readText(files, path);
  if (text.kind === 'bad') return text;
  const shop = parseShop(text.value, path);
  const problems = shop.kind === 'good' ? checkShop({ file: path, shop: shop.value }) : [];
  return problems.length > 0 ? { kind: 'bad', problems } : shop;
}

/** The text of a file of the library; one far too large is not read through. */
export function readText(files: Files, path: string): Parsed<string> {
  const read = attempt(path, () => {
    const bytes = files.readStart(path, maxLength + 1);
    if (bytes.length > maxLength) return bad(tooLarge(files.sizeOf(path), path));
    return textOf(bytes, path);
  });
  return read.kind === 'bad' ? read : read.value;
}
