import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../src/commands/trees.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

type Branch = { [key: string]: Branch };

/** A shipped tree with one thing spoiled, in a file of its own. */
function spoiled(change: (tree: Branch) => void): string {
  const tree = JSON.parse(readFileSync('trees/no-supply.json', 'utf8')) as Branch;
  change(tree);
  const path = join(scratch(), 'own.json');
  writeFileSync(path, JSON.stringify(tree));
  return path;
}

test('the library that we ship has no problem, and it says so', async () => {
  expect(await runCommand(trees, ['check'])).toMatchObject({ code: 0, out: 'No problem found.\n' });
});

test('a spoiled file has one line for each problem, and leaves with 1', async () => {
  const path = spoiled((tree) => {
    for (const cause of Object.values(tree['causes'] ?? {}).slice(0, 2)) delete cause['where'];
  });
  const { out, code } = await runCommand(trees, ['check', path]);

  expect(code).toBe(1);
  expect(out.trimEnd().split('\n')).toHaveLength(3);
  expect(out).toMatch(/own\.json.*where.*\[words-missing\]/);
  expect(out).toMatch(/2 problems\.\n$/);
});

test('problems as data carry code, path and mend', async () => {
  const path = spoiled((tree) => delete tree['start']);
  const { out, code } = await runCommand(trees, ['check', path, '--json']);

  expect(code).toBe(1);
  expect(JSON.parse(out)).toEqual([
    expect.objectContaining({ code: 'wrong-shape', path: 'start', mend: expect.any(String) }),
  ]);
});

test('a file that is not there is one problem', async () => {
  const { out, code } = await runCommand(trees, ['check', 'nowhere.json']);

  expect(code).toBe(1);
  expect(out).toMatch(/nowhere\.json/);
  expect(out).toMatch(/1 problem\.\n$/);
});

test('a verb that is not known names those that are', async () => {
  const { err, code } = await runCommand(trees, ['prune']);

  expect(code).toBe(2);
  expect(err).toMatch(/list \| check \| draw \| plan \| schema/);
});
