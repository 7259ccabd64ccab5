import { bad } from '../../core/problem.ts';
import { cleanLine } from '../../core/text.ts';
import { searchShop, type ShopEntry } from '../../core/tree/shop-search.ts';
import { loadShops } from '../../store/library.ts';
import { done, fail, printJson, type Ended, type Io } from '../io.ts';
import { treesFolder, type Given } from '../options.ts';

/** Columns of a line: what a small terminal shows whole. */
const width = 80;

/** `droplight trees shop [WORDS] [--json]`: what a tree may name by id, with its meaning. */
export function searchTheShop(io: Io, given: Given, words: readonly string[]): Ended {
  const { shop, problems } = loadShops(io.disk.files, [io.folders.shipped, treesFolder(io, given)]);
  const found = searchShop(shop, words);
  for (const problem of problems) fail(io, problem);
  if (given.flag('json')) {
    printJson(io, found);
    return done;
  }
  if (found.length === 0)
    return bad({
      code: 'not-in-shop',
      value: words.join(' '),
      message: `Nothing in the shop has all of these words: ${words.join(' ')}.`,
      mend: 'Try fewer, or only the beginning of one; or add what is missing to shop.json beside your tree.',
    });
  for (const line of linesOf(found)) io.out(`${line}\n`);
  return done;
}

function linesOf(found: readonly ShopEntry[]): readonly string[] {
  const longest = Math.max(...found.map(({ id }) => id.length));
  return found.map(({ kind, id, meaning }) => {
    const line = `${kind.padEnd(8)}${id.padEnd(longest)}  ${cleanLine(meaning)}`;
    return line.length > width ? `${line.slice(0, width - 1).trimEnd()}…` : line;
  });
}
