import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fillTree } from '../src/core/feed/fill.ts';
import { checkTree } from '../src/core/reason/plan/check-tree.ts';
import { makeModel } from '../src/core/reason/belief/model.ts';
import { asText } from '../src/core/telling/forms.ts';
import { tellTree } from '../src/core/telling/tell.ts';
import { mergeShops } from '../src/core/tree/own-shop.ts';
import { parseShop, parseTreeValue } from '../src/core/tree/parse.ts';
import { shippedShop, shippedTrees } from './helpers/library.ts';

const page = readFileSync('trees/README.md', 'utf8');
const exampleOf = (name: string): string =>
  new RegExp(`<!-- ${name} example.*-->\\n\`\`\`json\\n([^\`]*)\`\`\``).exec(page)?.[1] ?? '';
const example = exampleOf('authoring');
const shop = shippedShop();

type Part = Readonly<Record<string, Readonly<Record<string, object>>>>;

/** The tree of the page with its feed path, and without the rows that the circuit fills. */
function withFeed(): object {
  const tree = JSON.parse(example) as Part;
  const added = JSON.parse(exampleOf('feed')) as Part;
  const { 'horn-volts': whole = {} } = tree['checks'] ?? {};
  const { sound: _, 'shows-with': __, ...volts } = whole as Part;
  const checks = { ...tree['checks'], 'horn-volts': volts };
  const merged = (into: Part[string], from: Part[string] = {}) =>
    Object.fromEntries(Object.entries(into).map(([id, one]) => [id, { ...one, ...from[id] }]));
  return {
    ...tree,
    feed: added['feed'],
    causes: merged(tree['causes'] ?? {}, added['causes']),
    checks: merged(checks, added['checks']),
  };
}

const check = (text: string) =>
  checkTree(text, {
    file: 'horn-silent.json',
    shop,
    trees: shippedTrees().map(({ id }) => id),
  });

test('the tree built up in trees/README.md has nothing wrong, walked with every set of faults', () => {
  const checked = check(example);

  expect(checked.tree?.id).toBe('horn-silent');
  expect([checked.problems, checked.doubts]).toEqual([[], []]);
});

test('a tree written by hand from the page alone has nothing wrong', () => {
  const text = readFileSync('tests/fixtures/authoring/no-flash.json', 'utf8');

  const { tree, problems } = checkTree(text, { file: 'no-flash.json', shop, trees: [] });

  expect(problems).toEqual([]);
  expect([tree?.causes, tree?.checks].map((all) => Object.keys(all ?? {}).length)).toEqual([9, 11]);
});

test('it is read back with each of its causes', () => {
  const { tree } = check(example);
  const told = tree === undefined ? '' : asText(tellTree(tree, shop));

  for (const cause of Object.values(tree?.causes ?? {})) expect(told).toContain(cause.name);
});

test('with the branches of the page one that hangs on them is found, and nothing is wrong', () => {
  const tree = JSON.parse(example) as Part;
  const { 'fuse-look': look = {} } = tree['checks'] ?? {};
  const [whole, burnt] = (look as { results: readonly object[] }).results;
  const results = [whole, { ...burnt, next: 'horn-part' }];
  const checks = { ...tree['checks'], 'fuse-look': { ...look, results } };

  const checked = check(
    JSON.stringify({ ...tree, checks, ...(JSON.parse(exampleOf('branches')) as Part) }),
  );

  expect(checked.problems).toEqual([]);
  expect(checked.tree?.checks['horn-part']?.how[0]).toMatch(/^Unplugged together: /);
});

test('with the feed path of the page the circuit fills the rows, and nothing is wrong', () => {
  const { tree, problems } = check(JSON.stringify(withFeed()));

  expect(problems).toEqual([]);
  if (tree === undefined) throw new Error('no tree');
  const { background, points } = fillTree(tree, {}).checks['horn-volts'] ?? {};
  expect(background?.[0]).toBeGreaterThan(0.9);
  expect(points?.['fuse']?.[2]).toBeGreaterThan(0.9);
});

test('the shop of the page adds to ours', () => {
  const own = parseShop(exampleOf('shop'), 'shop.json');
  if (own.kind === 'bad') throw new Error(JSON.stringify(own.problems));
  const merged = mergeShops({ file: 'ours', shop }, { file: 'shop.json', shop: own.value });

  expect(merged.problems).toEqual([]);
  expect(merged.shop.facts).toHaveProperty('horn-relay');
});

test('what it says of two faults at once is what the model makes of them', () => {
  const tree = parseTreeValue(JSON.parse(example), 'horn-silent.json', shop);
  const model = tree.kind === 'good' ? makeModel(tree.value) : undefined;
  const volts = model?.checks.find(({ id }) => id === 'horn-volts');
  const full = (id: string): number =>
    volts?.links[model?.causes.findIndex((cause) => cause.id === id) ?? -1]?.[0] ?? NaN;

  const both = (volts?.background[0] ?? NaN) * full('fuse') * full('button');

  expect(both).toBeCloseTo((0.03 * 0.06) / 0.93, 3);
  expect(page).toContain('0.03 x 0.06 / 0.93, or\n2 in a thousand');
});
