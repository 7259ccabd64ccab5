import { quantities, quantityNames } from '../trade/units/quantities.ts';
import { clean } from '../text.ts';
import type { Shop } from './shop.ts';

/** One thing that a tree may name by its id, and what it means in a line. */
export type ShopEntry = {
  readonly kind: 'caution' | 'tool' | 'access' | 'fact' | 'book' | 'unit';
  readonly id: string;
  readonly meaning: string;
};

/** An entry with all that may be looked for in it. */
type Searched = ShopEntry & { readonly text: string };

/**
 * What a tree may name, of every kind: those whose id, meaning or text has all the words. A word
 * counts from its beginning, small letters as capitals: `fan` finds "Belts and fan", not "infant".
 */
export function searchShop(shop: Shop, words: readonly string[]): readonly ShopEntry[] {
  const wanted = words.flatMap((word) => word.split(/\s+/)).filter((word) => word !== '');
  return entriesOf(shop)
    .filter(({ text }) => wanted.every((word) => hasWord(text, word)))
    .map(({ kind, id, meaning }) => ({ kind, id, meaning: clean(meaning) }));
}

/** What a tree may name, of every kind, with its meaning. */
export const shopMeanings = (shop: Shop): readonly ShopEntry[] =>
  entriesOf(shop).map(({ kind, id, meaning }) => ({ kind, id, meaning: clean(meaning) }));

/** Whether a text has a word that begins so, small letters as capitals. */
export function hasWord(text: string, word: string): boolean {
  const small = text.toLowerCase();
  const sought = word.toLowerCase();
  for (let at = small.indexOf(sought); at >= 0; at = small.indexOf(sought, at + 1))
    if (at === 0 || !/[\p{L}\d]/u.test(small.charAt(at - 1))) return true;
  return false;
}

const entriesOf = (shop: Shop): readonly Searched[] => [
  ...Object.entries(shop.cautions).map(([id, { hazard, when, text }]) =>
    entry('caution', id, `${hazard}: ${when}`, text),
  ),
  ...Object.entries(shop.tools).map(([id, { name, use }]) => entry('tool', id, name, use)),
  ...Object.entries(shop.accesses).map(([id, { name, open, close }]) =>
    entry('access', id, `${name} (${open} min to open, ${close} to close)`),
  ),
  ...Object.entries(shop.facts).map(([id, { ask, values }]) =>
    entry(
      'fact',
      id,
      `${Object.keys(values).join(' | ')}: ${ask}`,
      Object.values(values).join(' '),
    ),
  ),
  ...Object.entries(shop.book).map(([id, { name, quantity, unit }]) =>
    entry('book', id, `${name}, in ${unit} (${quantity})`),
  ),
  ...quantityNames.flatMap((quantity) =>
    quantities[quantity].units.map(({ id, aliases }) =>
      entry('unit', id, `of "${quantity}"${aliases.length > 0 ? `: ${aliases.join(', ')}` : ''}`),
    ),
  ),
];

const entry = (kind: ShopEntry['kind'], id: string, meaning: string, more = ''): Searched => ({
  kind,
  id,
  meaning,
  text: `${kind} ${id} ${meaning} ${more}`,
});
