import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sessionSchema } from '../src/core/session/schema.ts';
import { feedWords } from '../src/core/tree/schema/feed-words.ts';
import { treeSchema } from '../src/core/tree/schema/tree-schema.ts';
import { treeWords } from '../src/core/tree/schema/words.ts';
import { version } from '../src/core/version.ts';
import { shippedShop } from './helpers/library.ts';

const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

test.each([
  ['tree', () => treeSchema(shippedShop())],
  ['session', sessionSchema],
])('the committed %s schema is the one that the model makes', (name, make) => {
  expect(read(`trees/${name}.schema.json`)).toEqual(JSON.parse(JSON.stringify(make())));
});

/** Every key of every object in a schema, with what is said of it. */
function keysOf(node: unknown, path = ''): readonly (readonly [string, unknown])[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, value]): readonly (readonly [string, unknown])[] => {
    const inner = keysOf(value, `${path}.${key}`);
    if (key !== 'properties' || isRule(node)) return inner;
    const own = Object.entries(value).map(
      ([name, said]) => [`${path}.${name}`, said] as readonly [string, unknown],
    );
    return [...own, ...inner];
  });
}

/** Conditions hold keys against values; they describe nothing. */
const isRule = (node: object): boolean => !('type' in node);

test('an editor has a word for every key of a tree', () => {
  const keys = keysOf(treeSchema(shippedShop()));
  const told = (said: unknown): boolean =>
    typeof said === 'object' && said !== null && 'description' in said && said.description !== '';

  expect(keys.length).toBeGreaterThan(200);
  expect(keys.filter(([, said]) => !told(said)).map(([path]) => path)).toEqual([]);
});

test('no word of the schema tells of a key that no tree has', () => {
  const text = JSON.stringify(treeSchema(shippedShop()));
  const words = Object.entries({ ...treeWords, ...feedWords });

  expect(words.filter(([, word]) => !text.includes(JSON.stringify(word)))).toEqual([]);
  expect(words.filter(([, word]) => word.length > 160)).toEqual([]);
});

test('the program says the version that package.json has', () => {
  expect(read('package.json')).toMatchObject({ version });
});
