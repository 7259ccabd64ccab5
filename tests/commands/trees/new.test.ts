import { cpSync, existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { open } from '../../../src/commands/open.ts';
import { trees } from '../../../src/commands/trees/trees.ts';
import { MemoryFiles } from '../../helpers/memory-files.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';

const run = (...args: readonly string[]) => runCommand(trees, args);

const withFolder = (folder: string): string => {
  mkdirSync(join(folder, 'mine'));
  return folder;
};

test('trees new prints a tree that trees check finds nothing wrong with', async () => {
  const folder = scratch();

  const { code, out } = await runCommand(trees, ['new'], { folder });
  writeFileSync(join(folder, 'my-complaint.json'), out);

  expect(code).toBe(0);
  expect((await runCommand(trees, ['check', 'my-complaint.json'], { folder })).code).toBe(0);
});

test('trees new gives every cause a row in the complaint’s own test', async () => {
  const tree = JSON.parse((await run('new')).out);

  const rows = tree.checks[tree.complaint.confirm]['shows-with'];
  expect(tree.format).toBe(2);
  expect(Object.keys(rows)).toEqual([...Object.keys(tree.causes), 'unlisted']);
});

test('trees new FILE writes it with its name as its id, and never over another', async () => {
  const folder = scratch();

  const first = await runCommand(trees, ['new', 'dead-wipers.json'], { folder });
  const path = join(folder, 'dead-wipers.json');
  const second = await runCommand(trees, ['new', 'dead-wipers.json'], { folder });

  expect([first.code, first.out]).toEqual([0, `${path}\n`]);
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ id: 'dead-wipers' });
  expect(second.code).toBe(2);
  expect(second.err).toMatch(/a file of this name already/);
});

test('trees new adds ".json" and puts the schema beside the tree, which points to it', async () => {
  const folder = scratch();

  const { out } = await runCommand(trees, ['new', 'mine/dead-wipers'], {
    folder: withFolder(folder),
  });
  const path = join(folder, 'mine', 'dead-wipers.json');

  expect(out).toBe(`${path}\n`);
  expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ $schema: './tree.schema.json' });
  expect(readFileSync(join(folder, 'mine', 'tree.schema.json'))).toEqual(
    readFileSync('trees/tree.schema.json'),
  );
});

test('trees new writes among the trees of the clone that one stands in, where its id is found', async () => {
  const folder = scratch();
  const shipped = join(folder, 'trees');
  cpSync('trees', shipped, { recursive: true });

  const { out } = await runCommand(trees, ['new', 'dead-wipers.json'], { folder, shipped });
  const listed = await runCommand(trees, ['list'], { folder, shipped });

  expect(out).toBe(`${join(shipped, 'dead-wipers.json')}\n`);
  expect(listed.out).toMatch(/^dead-wipers /m);
});

test('trees new of a program that is installed writes into the current folder', async () => {
  const folder = scratch();
  const shipped = join(folder, 'node_modules', 'trees');
  cpSync('trees', shipped, { recursive: true });

  const { out } = await runCommand(trees, ['new', 'dead-wipers.json'], { folder, shipped });

  expect(out).toBe(`${join(folder, 'dead-wipers.json')}\n`);
});

test('trees new with --trees writes into that folder, where the other commands find it', async () => {
  const folder = scratch();
  const [where, id] = [['--trees', folder], 'dead-wipers'];

  const { out } = await run('new', id, ...where);
  const checked = await run('check', ...where);
  const drawn = await run('draw', id, ...where);
  const opened = await runCommand(open, [id, '--vehicle', 'Van', ...where], { folder });

  expect(out).toBe(`${join(folder, `${id}.json`)}\n`);
  expect([checked.code, drawn.code, opened.code]).toEqual([0, 0, 0]);
});

test('trees new of an id that the library has is told', async () => {
  const { code, err } = await run('new', 'charging.json');

  expect(code).toBe(2);
  expect(err).toMatch(/There is a tree "charging" already/);
});

test.each(['My Tree.json', '../.json', 'constructor.json'])(
  'trees new refuses the name %s',
  async (name) => {
    const folder = scratch();

    const { code, err } = await runCommand(trees, ['new', name], { folder });

    expect(code).toBe(2);
    expect(err).toMatch(/cannot be the id of a tree/);
    expect(existsSync(join(folder, name))).toBe(false);
  },
);

test('trees new on a disk that refuses says so and exits 3', async () => {
  const files = new MemoryFiles();
  files.refuse = ({ name }) => (name === 'create' ? 'EROFS' : undefined);

  const { code, err } = await runCommand(trees, ['new', 'dead-wipers.json'], { files });

  expect(code).toBe(3);
  expect(err).toMatch(/read-only/);
});
