import { mkdtempSync, openSync, closeSync, writeSync, writeFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { trees } from '../../src/commands/trees/trees.ts';
import { skeleton } from '../../src/core/tree/skeleton.ts';
import { runCommand } from '../helpers/commands.ts';

const folder = mkdtempSync(join(tmpdir(), 'droplight-hostile-'));
afterAll(() => rmSync(folder, { recursive: true }));

const check = async (name: string) => {
  const { code, out } = await runCommand(trees, ['check', name], { folder });
  const [file = '', ...lines] = out.trim().split('\n');
  return { code, file, lines };
};
const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
const plain = JSON.stringify(skeleton('plain'));

test('a tree of 100 MB is one problem, and is not read', async () => {
  const handle = openSync(join(folder, 'large.json'), 'w');
  const part = `"${'x'.repeat(1_048_573)}",`;
  writeSync(handle, '[');
  for (let written = 0; written < 100; written += 1) writeSync(handle, part);
  closeSync(handle);
  const before = process.memoryUsage().rss;

  const { code, file, lines } = await check('large.json');

  expect(code).toBe(1);
  expect(lines).toHaveLength(1);
  expect([file, lines[0]].join(' ')).toMatch(/large\.json +The file is larger than 1024 KiB/);
  // The file is 100 MB; had it been read, that much and more would have been added.
  expect(process.memoryUsage().rss - before).toBeLessThan(80_000_000);
});

test.each<[title: string, text: string, line: RegExp]>([
  ['10,000 lists deep', '['.repeat(10_000) + ']'.repeat(10_000), /nested more than 32 deep/],
  ['10,000 objects deep', '{"a":'.repeat(10_000) + '1' + '}'.repeat(10_000), /more than 32 deep/],
  ['10,000 brackets never closed', '['.repeat(10_000), /nested more than 32 deep/],
  ['a key twice', plain.replace('"format":2', '"format":2,"format":2'), /"format" stands twice/],
  [
    'the same key in other letters',
    plain.replace('"format":2', '"format":2,"\\u0066ormat":2'),
    /"format" stands twice/,
  ],
  [
    '__proto__ as a cause',
    plain.replace('"second-cause":{"name"', '"__proto__":{"name"'),
    /"__proto__" cannot be used/,
  ],
  [
    '__proto__ at the root',
    plain.replace('{', '{"__proto__":{"odds":1},'),
    /A tree has no key "__proto__"/,
  ],
  [
    'a live escape sequence',
    plain.replace('Whole and tight.', '\\u001b[2J\\u001b]0;x\\u0007'),
    /control characters/,
  ],
  [
    'text that turns the line round',
    plain.replace('Whole and tight.', '\\u202egnp.exe'),
    /marks that are not seen/,
  ],
  [
    'a raw control character',
    plain.replace('Whole and tight.', '\u001b[2J'),
    /holds a tab or another control character/,
  ],
  ['NaN', plain.replace('"odds":60', '"odds":NaN'), /The word NaN has no quotes/],
  [
    'odds of 1e308',
    plain.replace('"odds":60', '"odds":1e308'),
    /causes\.first-cause\.odds: .*1e\+308/,
  ],
  [
    'odds of 1e999',
    plain.replace('"odds":60', '"odds":1e999'),
    /causes\.first-cause\.odds: .*too large/,
  ],
  [
    'minutes of 1e308',
    plain.replace('"minutes":4,', '"minutes":1e308,'),
    /checks\.second-reading\.minutes/,
  ],
  ['nothing at all', '', /The file is empty/],
  ['bytes that are no text', '\u0000\u0000\u0000', /This sign cannot stand here/],
])('a tree with %s is told in plain characters and does not crash', async (title, text, line) => {
  const name = `tree-${title.replaceAll(/[^a-z0-9]+/gi, '-')}.json`;
  // Called as its file is, so that nothing is wrong with that.
  write(name, text.replace('"id":"plain"', `"id":"${name.replace('.json', '')}"`));

  const { code, lines } = await check(name);

  expect(code).toBe(1);
  expect(lines.filter((one) => line.test(one))).toHaveLength(1);
  expect(lines).toHaveLength(1);
  // oxlint-disable-next-line no-control-regex -- control characters are what must not be there
  expect(lines.join('')).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u202e]/);
  expect(({} as Record<string, unknown>)['odds']).toBeUndefined();
});
