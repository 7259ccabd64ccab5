import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { feed } from '../../src/commands/feed.ts';
import { open } from '../../src/commands/open.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

/** A folder with a tree of one's own that names a tool which only the shop beside it has. */
function ownFolder(change: object = {}): string {
  const folder = scratch();
  const tree = JSON.parse(readFileSync('trees/dim-lamps.json', 'utf8'));
  const [first = ''] = Object.keys(tree.checks);
  tree.checks[first].tools = ['winch'];
  writeFileSync(join(folder, 'mine.json'), JSON.stringify({ ...tree, id: 'mine', ...change }));
  const shop = { format: 1, tools: { winch: { name: 'Hand winch' } } };
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(shop));
  return folder;
}

test.each([
  ['trees draw', trees, ['draw', 'mine.json']],
  ['trees plan', trees, ['plan', './mine.json', '--runs', '2']],
  ['feed', feed, ['mine.json']],
  ['open', open, ['mine.json', '--vehicle', 'Van']],
] as const)('%s takes a file, with the shop beside it', async (_, command, args) => {
  const { code, err } = await runCommand(command, args, { folder: ownFolder() });

  expect([code, err]).toEqual([0, '']);
});

test('a session of a tree in a file keeps what the shop beside it gave', async () => {
  const folder = ownFolder();

  const { out } = await runCommand(open, ['mine.json', '--vehicle', 'Van'], { folder });
  const [header = ''] = readFileSync(out.trim(), 'utf8').split('\n');

  expect(JSON.parse(header)).toMatchObject({
    tree: 'mine',
    shop: { tools: { winch: { name: 'Hand winch' } } },
  });
});

test('a file with problems tells the first of them, and one that is not there says so', async () => {
  const broken = await runCommand(trees, ['draw', 'mine.json'], {
    folder: ownFolder({ start: 'nowhere' }),
  });
  const missing = await runCommand(trees, ['draw', 'mine.json']);

  expect([broken.code, broken.err]).toEqual([
    2,
    expect.stringMatching(/mine\.json:1:\d+: start: /),
  ]);
  expect([missing.code, missing.err]).toEqual([3, expect.stringMatching(/no such file/)]);
});

test('a file whose id the library has counts in its place, and the other is told', async () => {
  const { code, out, err } = await runCommand(trees, ['draw', 'mine.json'], {
    folder: ownFolder({ id: 'charging', title: 'My own' }),
  });

  expect([code, out]).toEqual([0, expect.stringMatching(/My own/)]);
  expect(err).toMatch(/charging\.json: id: /);
});

test('an id that is not there points to the file beside one, to --trees and to those that are', async () => {
  const beside = await runCommand(trees, ['plan', 'mine'], { folder: ownFolder() });
  const nowhere = await runCommand(trees, ['plan', 'chargin']);

  expect(beside.err).toMatch(/There is a file mine\.json here: name it so, with its "\.json"/);
  expect(nowhere.err).toMatch(/Did you mean charging\? .*--trees DIR/);
});

test('trees plan of a folder tells the trees that it cannot plan', async () => {
  const folder = ownFolder({ start: 'nowhere' });

  const { code, err } = await runCommand(trees, ['plan', '--trees', folder]);

  expect([code, err]).toEqual([
    1,
    expect.stringMatching(/mine\.json:1:\d+: start: There is no check/),
  ]);
});
