import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readSession } from '../../src/store/recover.ts';
import type { Shelf } from '../../src/store/shelf.ts';

const folder = 'sessions/examples';
const files = readdirSync(folder).filter((name) => name.endsWith('.jsonl'));

test('a session is read the same with a shelf as without, whatever was read before it', () => {
  const shelf: Shelf = new Map();
  for (const name of [...files, ...files.toReversed()]) {
    const bytes = readFileSync(join(folder, name));

    expect(readSession(bytes, name, shelf)).toEqual(readSession(bytes, name));
  }
  expect(shelf.size).toBeGreaterThan(3);
});

test('a tree that was read before is the same one, so that it is settled once', () => {
  const shelf: Shelf = new Map();
  const [name = ''] = files;
  const read = () => readSession(readFileSync(join(folder, name)), name, shelf);
  const [first, second] = [read(), read()];

  if (first.kind === 'bad' || second.kind === 'bad') throw new Error('not read');
  expect(second.value.header.trees).toBe(first.value.header.trees);
});

test('a header that is none stays none beside a tree that is known', () => {
  const shelf: Shelf = new Map();
  const [name = ''] = files;
  const bytes = readFileSync(join(folder, name));
  readSession(bytes, name, shelf);
  const spoiled = Buffer.from(bytes.toString().replace('"units":"us"', '"units":"xx"'));

  expect(readSession(spoiled, name, shelf)).toMatchObject({ kind: 'bad' });
});
