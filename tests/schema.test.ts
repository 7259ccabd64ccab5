import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sessionSchema, treeSchema } from '../src/core/session/schema.ts';
import { version } from '../src/core/version.ts';

const read = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));

test.each([
  ['tree', treeSchema],
  ['session', sessionSchema],
])('the committed %s schema is the one that the model makes', (name, make) => {
  expect(read(`trees/${name}.schema.json`)).toEqual(JSON.parse(JSON.stringify(make())));
});

test('the program says the version that package.json has', () => {
  expect(read('package.json')).toMatchObject({ version });
});
