import { expect, test } from 'vitest';
import { bareTree, isOwn, isTestNamed } from '../../../src/core/tree/own/bare.ts';
import { fittingCautions } from '../../../src/core/tree/own/fitting-cautions.ts';
import { readHealthyBand } from '../../../src/core/tree/own/healthy-band.ts';
import { withNamed } from '../../../src/core/tree/own/named.ts';
import { parseTree, parseTreeValue } from '../../../src/core/tree/parse.ts';
import { shippedShop } from '../../helpers/library.ts';

const words = 'The wipers stop half way when it rains.';

test('a bare tree is made of the words alone, and read back as it was written', () => {
  const tree = bareTree(words);

  expect(tree).toMatchObject({
    id: 'own-wipers-stop-half-way',
    title: words.slice(0, -1),
    causes: {},
  });
  expect(isOwn(tree)).toBe(true);
  expect(parseTreeValue(JSON.parse(JSON.stringify(tree)), 'own').kind).toBe('good');
});

test('a second complaint in the same words has an id of its own', () => {
  expect(bareTree(words, undefined, [bareTree(words).id]).id).toBe('own-wipers-stop-half-way-2');
  expect(bareTree('???').id).toBe('own-one');
});

test('a file may not be called as the program calls such a tree', () => {
  const parsed = parseTree(JSON.stringify(bareTree(words)), 'own-wipers.json');

  expect(parsed).toMatchObject({ kind: 'bad', problems: [{ code: 'reserved-name', path: 'id' }] });
});

test('the test of the complaint is named by what is tried', () => {
  const tree = bareTree(words);
  const { confirm } = tree.complaint;
  const named = withNamed(tree, {
    check: confirm,
    does: 'try',
    what: 'the wipers on a wet windshield',
    good: 'they sweep the whole glass',
    cautions: [],
  });

  expect([isTestNamed(tree), isTestNamed(named)]).toEqual([false, true]);
  expect(named.checks[confirm]?.results.map(({ id, label }) => `${id}: ${label}`)).toEqual([
    'good: they sweep the whole glass',
    'bad: it shows',
  ]);
});

test.each([
  ['12.2 V or more', { quantity: 'voltage', unit: 'V', from: 12.2 }],
  ['at least 12,2 V', { quantity: 'voltage', unit: 'V', from: 12.2 }],
  ['under 0.5 V', { quantity: 'voltage', unit: 'V', below: 0.5 }],
  ['0.5 ohm or less', { quantity: 'resistance', unit: 'ohm', below: 0.5 }],
  ['11 to 13 V', { quantity: 'voltage', unit: 'V', from: 11, below: 13 }],
  ['between 11 V and 13 V', { quantity: 'voltage', unit: 'V', from: 11, below: 13 }],
  ['11-13 V', { quantity: 'voltage', unit: 'V', from: 11, below: 13 }],
])('%s is a healthy band', (text, band) => {
  expect(readHealthyBand(text)).toEqual(band);
});

test.each(['bright and tight', '12', '12 V', '13 to 11 V', '11 V to 13 A', 'up to the mark', ''])(
  '"%s" is none: the person judges',
  (text) => {
    expect(readHealthyBand(text)).toBeUndefined();
  },
);

test('own words get the cautions that the same words in a tree must have', () => {
  const shop = shippedShop();

  expect(fittingCautions(['Look at the fuel line by the pump'], shop)).toEqual(['fuel-fire']);
  expect(fittingCautions(['Look at the wiper park switch'], shop)).toEqual([]);
  expect(fittingCautions(['Feel the fuel tank, engine running'], shop)).toContain('rotate');
});
