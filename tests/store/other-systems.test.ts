import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadLibrary } from '../../src/store/library.ts';
import { readSettings } from '../../src/store/settings.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';

/** A text as an editor of another system saves it: a mark at the beginning, returns before the newlines. */
const elsewhere = (text: string): string => `\ufeff${text.replaceAll('\n', '\r\n')}`;

test('settings that another system saved are read', () => {
  const text = '{\n  "units": "metric",\n  "who": "JB"\n}\n';

  expect(readSettings(new MemoryFiles({ 'set/settings.json': elsewhere(text) }), 'set')).toEqual(
    readSettings(new MemoryFiles({ 'set/settings.json': text }), 'set'),
  );
  expect(readSettings(new MemoryFiles({ 'set/settings.json': elsewhere(text) }), 'set').who).toBe(
    'JB',
  );
});

test('trees and their shop that another system saved are the same trees', () => {
  const names = ['shop.json', 'no-supply.json', 'rough-idle.json'];
  const texts = names.map(
    (name) => [`trees/${name}`, readFileSync(`trees/${name}`, 'utf8')] as const,
  );
  const load = (saved: (text: string) => string) =>
    loadLibrary(
      new MemoryFiles(Object.fromEntries(texts.map(([path, text]) => [path, saved(text)]))),
      {
        folder: 'trees',
        shipped: 'trees',
      },
    );
  const here = load((text) => text);

  expect(here.trees.map(({ id }) => id).toSorted()).toEqual(['no-supply', 'rough-idle']);
  expect(load(elsewhere)).toEqual(here);
});

test('every file of the package has a name that every system takes', () => {
  const names = ['src/guide', 'trees', 'sessions/examples'].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' }).flatMap((path) => path.split('/')),
  );

  expect(
    names.filter((name) => /[<>:"|?*\\]|[ .]$|^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/i.test(name)),
  ).toEqual([]);
  expect(names.length).toBeGreaterThan(20);
});
