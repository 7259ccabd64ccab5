import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { accountOf } from '../../../src/commands/write.ts';
import { readSession } from '../../../src/store/recover.ts';

const folder = 'sessions/examples';
const names = readdirSync(folder)
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => name.replace('.jsonl', ''));

const reading = (name: string) => {
  const read = readSession(readFileSync(join(folder, `${name}.jsonl`)), name);
  if (read.kind === 'bad') throw new Error(`${name} cannot be read`);
  return read.value;
};

test.each(names)('the account of %s is the one that lies beside it, byte for byte', (name) => {
  expect(accountOf(reading(name))).toBe(readFileSync(join(folder, `${name}.md`), 'utf8'));
});

test.each(names)('the example %s is whole', (name) => {
  expect(reading(name).blemishes).toEqual([]);
});

test('there are at least two examples', () => {
  expect(names.length).toBeGreaterThanOrEqual(2);
});
