import { copyFileSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const old = join(process.cwd(), 'tests', 'fixtures', 'format-one', 'no-start.json');

test('trees upgrade rewrites a file, keeps the old text beside it, and loses nothing of that', async () => {
  const folder = scratch();
  const path = join(folder, 'no-start.json');
  copyFileSync(old, path);

  const first = await runCommand(trees, ['upgrade', 'no-start.json'], { folder });
  const second = await runCommand(trees, ['upgrade', 'no-start.json'], { folder });

  expect([first.code, first.out]).toEqual([0, `${path}\n    what it was: ${path}.before\n`]);
  expect(readFileSync(`${path}.before`, 'utf8')).toBe(readFileSync(old, 'utf8'));
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ format: 2, id: 'no-start' });
  expect([second.code, second.out]).toEqual([0, `${path}\n    what it was: ${path}.before-2\n`]);
});

test('trees upgrade without a file says how it is used', async () => {
  const { code, err } = await runCommand(trees, ['upgrade']);
  expect([code, err]).toEqual([2, expect.stringContaining('droplight trees upgrade FILES')]);
});
