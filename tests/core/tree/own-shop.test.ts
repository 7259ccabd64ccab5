import { expect, test } from 'vitest';
import { checkShop, mergeShops } from '../../../src/core/tree/own-shop.ts';
import { Shop } from '../../../src/core/tree/shop.ts';

const shop = (content: object) => Shop.parse({ format: 1, ...content });
const caution = (text: string) => ({ hazard: 'Bite', text, when: 'near it' });
const merge = (library: object, own: object) =>
  mergeShops({ file: 'ours', shop: shop(library) }, { file: 'mine', shop: shop(own) });

test('a shop of one’s own adds every kind of entry', () => {
  const more = {
    cautions: { bite: caution('It bites.') },
    tools: { winch: { name: 'Hand winch' } },
    accesses: { hatch: { name: 'Hatch open', open: 1, close: 1 } },
    sources: { notes: { title: 'Notes', mark: 'common practice, no source' } },
    facts: { relay: { ask: 'A relay?', values: { yes: 'yes', no: 'no' } } },
    book: { draw: { name: 'Blower draw', quantity: 'current', unit: 'A' } },
  };
  const before = { tools: { dvm: { name: 'Meter' } } };

  const { shop: merged, problems } = merge(before, more);

  expect(problems).toEqual([]);
  expect(merged).toEqual(shop({ ...more, tools: { ...before.tools, ...more.tools } }));
});

test('an entry that both have alike is no clash', () => {
  const same = { cautions: { bite: caution('It bites.') } };

  expect(merge(same, same)).toEqual({ shop: shop(same), problems: [] });
});

test('of two cautions with one id the library’s stands, and the other is told with both files', () => {
  const { shop: merged, problems } = merge(
    { cautions: { bite: caution('It bites.') } },
    { cautions: { bite: caution('Quite harmless.') } },
  );

  expect(merged.cautions['bite']?.text).toBe('It bites.');
  expect(problems).toMatchObject([
    { code: 'shop-clash', file: 'mine', path: 'cautions.bite', value: 'bite' },
  ]);
  expect(problems[0]?.message).toMatch(/stands in ours .* The library’s counts/);
});

test('of two tools with one id one’s own counts, and is told', () => {
  const { shop: merged, problems } = merge(
    { tools: { dvm: { name: 'Meter' } } },
    { tools: { dvm: { name: 'Old meter' } } },
  );

  expect(merged.tools['dvm']?.name).toBe('Old meter');
  expect(problems).toMatchObject([{ code: 'shop-clash', path: 'tools.dvm' }]);
});

test('a fact with nothing to choose and a book figure in a unit that is none are told', () => {
  const odd = shop({
    facts: { relay: { ask: 'A relay?', values: { yes: 'yes' } } },
    book: { draw: { name: 'Blower draw', quantity: 'current', unit: 'V' } },
  });

  expect(checkShop({ file: 'mine', shop: odd })).toMatchObject([
    { code: 'fact-without-choice', file: 'mine', path: 'facts.relay.values' },
    { code: 'unknown-unit', file: 'mine', path: 'book.draw.unit', value: 'V' },
  ]);
});
