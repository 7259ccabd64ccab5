import type { Problem } from '../problem.ts';
import { findUnit, unitNames } from '../trade/units/units.ts';
import type { Shop } from './shop.ts';
import { unknownAmong } from './unknown.ts';

/** A shop and the file that it was read from. */
export type ShopFile = { readonly file: string; readonly shop: Shop };

/** What a shop holds, each kind with the word for one of it. */
const shopKinds = {
  cautions: 'caution',
  tools: 'tool',
  accesses: 'access',
  sources: 'source',
  facts: 'fact',
  book: 'book figure',
} as const;

type ShopKind = keyof typeof shopKinds;

const kinds = Object.keys(shopKinds) as readonly ShopKind[];

/**
 * The library's shop with one's own added to it. An id that both have with other content is told:
 * one's own counts for the trees that were written for it, but never a caution of one's own, since
 * nobody may make one of the library's milder.
 */
export function mergeShops(
  library: ShopFile,
  own: ShopFile,
): { readonly shop: Shop; readonly problems: readonly Problem[] } {
  const [theirs, ours] = [library.shop, own.shop];
  const shop = {
    ...theirs,
    cautions: { ...ours.cautions, ...theirs.cautions },
    tools: { ...theirs.tools, ...ours.tools },
    accesses: { ...theirs.accesses, ...ours.accesses },
    sources: { ...theirs.sources, ...ours.sources },
    facts: { ...theirs.facts, ...ours.facts },
    book: { ...theirs.book, ...ours.book },
    baseline: { ...theirs.baseline, ...ours.baseline },
  };
  return { shop, problems: kinds.flatMap((kind) => clashes(kind, library, own)) };
}

function clashes(kind: ShopKind, library: ShopFile, own: ShopFile): readonly Problem[] {
  const [theirs, ours] = [library.shop[kind], own.shop[kind]];
  const differs = (id: string): boolean =>
    Object.hasOwn(theirs, id) && JSON.stringify(theirs[id]) !== JSON.stringify(ours[id]);
  const stands = kind === 'cautions' ? 'The library’s counts' : 'This one counts here';
  return Object.keys(ours)
    .filter(differs)
    .map((id) => ({
      code: 'shop-clash',
      file: own.file,
      path: `${kind}.${id}`,
      value: id,
      message: `The ${shopKinds[kind]} "${id}" stands in ${library.file} with other content. ${stands}.`,
      mend: 'Give yours another id, or take it out.',
    }));
}

/** What is wrong with a shop by itself: facts that leave nothing to ask, units that are none. */
export function checkShop({ shop, file }: ShopFile): readonly Problem[] {
  const facts = Object.entries(shop.facts)
    .filter(([, { values }]) => Object.keys(values).length < 2)
    .map(([id]) => ({
      code: 'fact-without-choice',
      file,
      path: `facts.${id}.values`,
      value: id,
      message: `The fact "${id}" has fewer than two values, so there is nothing to ask.`,
      mend: 'Give every value that a vehicle may have, each with its wording.',
    }));
  const units = Object.entries(shop.book)
    .filter(([, { quantity, unit }]) => findUnit(quantity, unit) === undefined)
    .map(([id, { quantity, unit }]) => ({
      ...unknownAmong('unit', unit, `book.${id}.unit`, unitNames(quantity)),
      file,
    }));
  return [...facts, ...units];
}
