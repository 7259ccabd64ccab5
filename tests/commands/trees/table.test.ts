import { copyFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const horn = readFileSync('tests/fixtures/authoring/horn.answers', 'utf8').split('\n').slice(0, -1);

async function hornTree(): Promise<string> {
  const folder = scratch();
  await runCommand(trees, ['write', 'horn.json'], { folder, lines: [...horn, ''] });
  return folder;
}

const table = (folder: string, ...args: readonly string[]) =>
  runCommand(trees, ['table', 'horn.json', ...args], { folder });

test('trees table prints causes down and checks across, and takes an edited one back', async () => {
  const folder = await hornTree();
  const before = readFileSync(join(folder, 'horn.json'), 'utf8');
  const { out } = await table(folder);

  expect(out.split('\r\n')[1]).toBe('sound,,,,,3,3');
  expect(out.split('\r\n')[2]).toBe(
    'horn-fuse-burnt,Horn fuse burnt,40,15,certainly silent,burnt-through always,dead always',
  );
  writeFileSync(
    join(folder, 'horn.csv'),
    out
      .replace('horn-fuse-burnt,Horn fuse burnt,40,15', 'horn-fuse-burnt,Horn fuse burnt,35,12')
      .replace('burnt-through always', 'burnt-through 96'),
  );
  const back = await table(folder, '--from', 'horn.csv');

  expect([back.code, back.err]).toEqual([0, '']);
  expect(readFileSync(join(folder, 'horn.json.before'), 'utf8')).toBe(before);
  const tree = JSON.parse(readFileSync(join(folder, 'horn.json'), 'utf8'));
  expect(tree.causes['horn-fuse-burnt']).toMatchObject({ odds: 35, repair: { minutes: 12 } });
  expect(tree.checks['horn-fuse-whole']['shows-with']).toEqual({
    'horn-fuse-burnt': { 'burnt-through': 96 },
  });
});

test('trees table writes nothing where nothing changed, or where a cell cannot be read', async () => {
  const folder = await hornTree();
  const { out } = await table(folder);
  writeFileSync(join(folder, 'same.csv'), out);
  writeFileSync(join(folder, 'bad.csv'), out.replace('burnt-through always', 'burnt-through 960'));

  const same = await table(folder, '--from', 'same.csv');
  const bad = await table(folder, '--from', 'bad.csv');

  expect([same.code, same.out]).toEqual([0, expect.stringContaining('nothing was written')]);
  expect([bad.code, bad.err]).toEqual([
    2,
    expect.stringContaining('Row "horn-fuse-burnt", column "horn-fuse-whole"'),
  ]);
  expect(existsSync(join(folder, 'horn.json.before'))).toBe(false);
});

test('a tree of format 1 is upgraded before it has a table', async () => {
  const folder = scratch();
  copyFileSync('tests/fixtures/format-one/no-start.json', join(folder, 'no-start.json'));
  const { code, err } = await runCommand(trees, ['table', 'no-start.json'], { folder });

  expect([code, err]).toEqual([2, expect.stringContaining('droplight trees upgrade')]);
});
