import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';

/** What a file imports as values before it runs: neither types nor what it loads later. */
function importsOf(file: string): readonly string[] {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/^(?:import|export) (?!type\b)[^;]*?from '([^']+)';/gm)].flatMap(
    ([whole, from = '']) => (/^import \{(?:\s*type \w+,?)+\s*\}/.test(whole) ? [] : [from]),
  );
}

/** All that is loaded before a file runs: our files by path, libraries by name. */
function loadedBefore(entry: string): ReadonlyMap<string, string> {
  const from = new Map<string, string>([[entry, '']]);
  for (const file of from.keys())
    if (/\.tsx?$/.test(file))
      for (const name of importsOf(file)) {
        const path = name.startsWith('.') ? join(dirname(file), name) : name;
        if (!from.has(path)) from.set(path, file);
      }
  return from;
}

// Each of these costs a good part of the time to the first frame: see `npm run bench first`.
test.each(['zod', 'conf', 'src/app/update.ts', 'src/app/run/run.ts', 'src/store/journal.ts'])(
  'the first frame does without %s',
  (heavy) => {
    const loaded = loadedBefore('src/commands/screens.ts');
    const way = [heavy];
    for (let by = loaded.get(heavy); by !== undefined && by !== ''; by = loaded.get(by))
      way.unshift(by);

    expect(loaded.has('ink')).toBe(true);
    expect(loaded.has(heavy) ? way : []).toEqual([]);
  },
);

test('the larger part does load with what comes behind the first frame', () => {
  const loaded = loadedBefore('src/screens/contents.tsx');

  expect(loaded.has('zod')).toBe(true);
  expect(loaded.has('src/app/update.ts')).toBe(true);
});
