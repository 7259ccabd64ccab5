import { bad, good, type Parsed, type Problem } from '../problem.ts';
import { parseReading } from '../trade/units/reading.ts';
import { showReading } from '../trade/units/units.ts';
import { booksOf, byTheBook, limitsOf } from '../tree/limits.ts';
import type { Check, Tree } from '../tree/model.ts';
import type { Library, Shop } from '../tree/shop.ts';
import type { Sheet } from './vehicle/vehicle.ts';
import type { Leg, Story } from './story.ts';

/** A figure of the book as a person gives it. */
export type TypedFigure = { readonly reading: string; readonly where?: string | undefined };

/** The figures of the book that a tree's limits may stand on, in the order of its checks. */
export const booksAsked = ({ checks }: Tree): readonly string[] => [
  ...new Set(Object.values(checks).flatMap(({ results }) => results.flatMap(booksOf))),
];

/** Reads figures of the book as typed; an empty one is left out. The first problem is told. */
export function parseSheet(
  typed: Readonly<Record<string, TypedFigure>>,
  tree: Tree,
  shop: Shop,
): Parsed<Sheet> {
  const sheet: Sheet = {};
  for (const [id, { reading, where = '' }] of Object.entries(typed)) {
    if (reading.trim() === '') continue;
    if (!booksAsked(tree).includes(id)) return bad(unknownFigure(id, tree));
    const parsed = parseFigure(id, { reading, where }, { trees: [tree], shop });
    if (parsed.kind === 'bad') return parsed;
    sheet[id] = parsed.value;
  }
  return good(sheet);
}

/** Reads one figure of the book; a limit that it sets in a tree must lie where a reading can be. */
export function parseFigure(
  id: string,
  { reading, where = '' }: TypedFigure,
  { trees, shop }: Pick<Library, 'trees' | 'shop'>,
): Parsed<Sheet[string]> {
  const figure = Object.hasOwn(shop.book, id) ? shop.book[id] : undefined;
  if (figure === undefined) return bad(noFigure(id, shop));
  const parsed = parseReading(reading, figure);
  if (parsed.kind === 'bad') return parsed;
  const own = { ...parsed.value, typed: reading };
  const odd = trees
    .filter((tree) => booksAsked(tree).includes(id))
    .map((tree) => oddFigure(tree, id, own))
    .find((one) => one !== undefined);
  if (odd !== undefined) return bad(odd);
  return good({ ...own, ...(where.trim() !== '' && { where: where.trim() }) });
}

/** `18 inHg (shop manual, page 12)`: where it was read may follow in brackets. */
export function typedFigure(text: string): TypedFigure {
  const [, reading = '', where] = /^\s*([^(]*?)\s*(?:\((.*)\))?\s*$/.exec(text) ?? [];
  return { reading: reading === '' ? text.trim() : reading, where };
}

const noFigure = (id: string, { book }: Shop): Problem => ({
  code: 'unknown-book',
  value: id,
  message: `There is no book figure "${id}".`,
  mend: `Possible: ${Object.keys(book).join(', ')}.`,
});

const unknownFigure = (id: string, tree: Tree): Problem => ({
  code: 'unknown-book',
  value: id,
  message: `"${tree.id}" judges nothing by a book figure "${id}".`,
  mend: `Possible: ${booksAsked(tree).join(', ') || 'none'}.`,
});

/** That a figure would put a limit where no reading can be. */
function oddFigure(tree: Tree, id: string, own: Sheet[string]): Problem | undefined {
  for (const check of Object.values(byTheBook(tree, { [id]: own }).checks)) {
    if (check.reading === undefined) continue;
    const [low, high] = check.reading.plausible;
    const moved = check.results.filter((result) => booksOf(result).includes(id)).flatMap(limitsOf);
    if (moved.some((limit) => limit < low || limit > high))
      return {
        code: 'book-implausible',
        value: own.typed ?? '',
        message: `By ${showReading(own.value, own.unit)} in the book a limit lies outside ${low} to ${high} ${check.reading.unit}.`,
        mend: 'Look at the book and its unit again, or leave it empty.',
      };
  }
  return undefined;
}

/**
 * By which figure the limits of a check were set: `by its own book: 18 inHg`, or the general one.
 * Empty for a check whose limits stand on no book.
 */
export function bookWords({ sheet }: Pick<Story, 'sheet'>, { shop }: Leg, check: Check): string {
  const ids = [...new Set(check.results.flatMap(booksOf))];
  const own = ids.flatMap((id) => {
    const read = Object.hasOwn(sheet, id) ? sheet[id] : undefined;
    if (read === undefined) return [];
    const name = ids.length > 1 ? `${shop.book[id]?.name.toLowerCase() ?? id} ` : '';
    return [`${name}${showReading(read.value, read.unit)}`];
  });
  if (ids.length === 0) return '';
  if (own.length === 0) return 'by the general figure';
  const rest = own.length < ids.length ? ', else by the general figure' : '';
  return `by its own book: ${own.join(', ')}${rest}`;
}
