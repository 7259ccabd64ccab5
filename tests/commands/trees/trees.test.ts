import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { trees } from '../../../src/commands/trees/trees.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';
import { shippedTrees } from '../../helpers/library.ts';

const run = (...args: readonly string[]) => runCommand(trees, args);
const fixture = (name: string) => join(process.cwd(), 'tests', 'fixtures', 'lint', `${name}.json`);

test('trees check finds nothing wrong with the trees we ship', async () => {
  expect(await run('check')).toMatchObject({
    code: 0,
    out: `${shippedTrees().length} trees checked, nothing is wrong.\n`,
    err: '',
  });
});

test('trees check tells doubtful routes when asked, and keeps them to itself else', async () => {
  // A flat battery twice as common: some routes then end at a cause that is not the likeliest.
  const file = join(scratch(), 'slow-crank.json');
  const text = readFileSync(join(process.cwd(), 'trees', 'slow-crank.json'), 'utf8');
  const tree = JSON.parse(text) as { causes: Record<string, { odds: number }> };
  const flat = tree.causes['battery-flat'];
  if (flat === undefined) throw new Error('no flat battery');
  flat.odds *= 2;
  writeFileSync(file, JSON.stringify(tree));
  const doubtful = /^[a-z-]+: .* of the vehicles end at .* although .* is likelier/m;

  expect((await run('check', file, '--doubts')).out).toMatch(doubtful);
  expect((await run('check', file)).out).not.toMatch(doubtful);
});

test('trees check prints every problem of the files named, a line each, and exits 1', async () => {
  const { code, out, err } = await run('check', fixture('no-source'), fixture('several'));

  expect(code).toBe(1);
  const lines = out.trim().split('\n');
  expect(lines[0]).toBe(fixture('no-source'));
  expect(lines[1]).toMatch(/^ {2}\d+:\d+: checks\.first-look\.source: Nothing says .* Add it\.$/);
  expect(lines[3]).toBe(fixture('several'));
  // What the way comes to no more for a wrong name is counted, not listed.
  expect(lines.filter((line) => line.endsWith(' And 2 more that follow from this.'))).toHaveLength(
    1,
  );
  expect(err).toBe('10 problems in 2 files.\n');
});

test('trees check --json prints one document of problems and doubts', async () => {
  const { out } = await run('check', fixture('no-source'), '--json');

  expect(JSON.parse(out)).toMatchObject({
    problems: [{ code: 'no-source' }, { code: 'file-name' }],
    doubts: [],
  });
});

test('trees check holds a file of ours against the checks that it shares with the library', async () => {
  const folder = scratch();
  const text = readFileSync(fixture('no-source'), 'utf8').replaceAll('first-look', 'vac-needle');
  writeFileSync(join(folder, 'plain.json'), text);

  const { out } = await runCommand(trees, ['check', 'plain.json'], { folder });

  expect(out).toMatch(/checks\.vac-needle\.results: In the tree "rough-idle" .* other results/);
});

test('trees check of a folder adds the shop beside the tree to ours', async () => {
  const folder = scratch();
  copyFileSync(fixture('unknown-caution'), join(folder, 'plain.json'));
  const bite = { hazard: 'Bite', text: 'It bites.', when: 'near' };
  const shop = { format: 1, cautions: { bite } };
  writeFileSync(join(folder, 'shop.json'), JSON.stringify(shop));

  const { code, out } = await runCommand(trees, ['check', '--trees', '.'], { folder });

  expect([code, out]).toEqual([0, '1 tree checked, nothing is wrong.\n']);
});

test('trees check of a file adds the shop beside it, and that of --trees', async () => {
  const [folder, beside] = [scratch(), scratch()];
  copyFileSync(fixture('unknown-caution'), join(beside, 'plain.json'));
  const bite = { hazard: 'Bite', text: 'It bites.', when: 'near' };
  const write = (into: string, cautions: object) =>
    writeFileSync(join(into, 'shop.json'), JSON.stringify({ format: 1, cautions }));
  const check = () => run('check', join(beside, 'plain.json'), '--trees', folder);

  write(folder, { bite });
  const fromFolder = await check();
  write(folder, {});
  write(beside, { bite });
  const fromBeside = await check();
  write(beside, {});
  const fromNowhere = await check();

  expect([fromFolder.code, fromBeside.code, fromNowhere.code]).toEqual([0, 0, 1]);
  expect(fromNowhere.out).toMatch(
    /There is no caution "bite"\. .*droplight trees shop bite; or add it to shop\.json beside/,
  );
});

test('trees check shop.json checks it as a shop', async () => {
  const folder = scratch();
  const check = (shop: object) => {
    writeFileSync(join(folder, 'shop.json'), JSON.stringify({ format: 1, ...shop }));
    return runCommand(trees, ['check', 'shop.json'], { folder });
  };

  const sound = await check({ tools: { winch: { name: 'Hand winch' } } });
  const shape = await check({ tools: { winch: { title: 'Hand winch' } } });
  const clash = await check({ tools: { dvm: { name: 'Meter' } } });

  expect([sound.code, sound.out]).toEqual([0, '1 shop checked, nothing is wrong.\n']);
  expect([shape.code, shape.out]).toEqual([1, expect.stringMatching(/tools\.winch/)]);
  expect(clash.out).toMatch(/tools\.dvm: The tool "dvm" stands in .*trees.shop\.json with other/);
});

test('trees check of a shop that is not there says so', async () => {
  expect((await run('check', 'nowhere/shop.json')).code).toBe(3);
});

test('trees check tells a shop that cannot be read once, and not all that it would hold', async () => {
  const folder = scratch();
  copyFileSync(fixture('no-source'), join(folder, 'plain.json'));
  writeFileSync(join(folder, 'shop.json'), '{');

  const { out } = await runCommand(trees, ['check', '--trees', '.'], { folder });

  expect(out.trim().split('\n')).toHaveLength(4);
  expect(out).toMatch(/shop\.json\n {2}1:2: The file ends here/);
});

test('trees check of a file that is not there exits 3 with one line', async () => {
  const { code, out } = await run('check', 'nowhere.json');

  expect(code).toBe(3);
  expect(out).toMatch(
    /^.*nowhere\.json\n {2}There is no such file or folder\. Check the name\.\n$/,
  );
});

test('trees schema prints the schema that lies beside the trees', async () => {
  const { out } = await run('schema');

  expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync('trees/tree.schema.json', 'utf8')));
});

test('trees with a verb that is not says which may be meant', async () => {
  const { code, err } = await run('chek');

  expect(code).toBe(2);
  expect(err).toMatch(/"trees chek" is not known\. Did you mean check\? "droplight trees help"/);
});

test.each([[['help']], [['--help']], [['-h']]])(
  'trees %s has a line for each verb',
  async (args) => {
    const { code, out } = await run(...args);

    expect(code).toBe(0);
    const verbs = ['list', 'new', 'shop', 'check', 'upgrade', 'plan', 'draw', 'schema'];
    expect(verbs.filter((verb) => !out.includes(`droplight trees ${verb}`))).toEqual([]);
    expect(out.split('\n').filter((line) => line.length > 80)).toEqual([]);
  },
);

test.each([[['help', 'new']], [['new', '--help']], [['new', 'a.json', '-h']]])(
  'trees %s tells of that verb and does nothing',
  async (args) => {
    const { code, out } = await run(...args);

    expect([code, out]).toEqual([0, expect.stringMatching(/^droplight trees new \[FILE\]\n {4}a/)]);
  },
);

test('trees refuses an option that another verb has, and says which this one has', async () => {
  const { code, err } = await run('new', '--doubts');

  expect(code).toBe(2);
  expect(err).toMatch(/'--doubts'.*Options here: --trees, --sessions\.\n$/);
  expect((await run('draw', 'charging', '--loud')).err).toMatch(
    /Options here: --trees, --sessions, --as\.\n$/,
  );
});

test('trees check tells a file whose name is not the id of its tree', async () => {
  const { code, out } = await run('check', fixture('no-source'));

  expect(code).toBe(1);
  expect(out).toMatch(
    /4:3: id: The tree is called "plain", its file no-source\.json\. Call the file plain\.json, or /,
  );
});

test('trees check tells a file that is not found for a hidden ending, and a folder without trees', async () => {
  const folder = scratch();
  const empty = await run('check', '--trees', folder);
  copyFileSync(fixture('no-source'), join(folder, 'plain.json.txt'));
  const hidden = await run('check', '--trees', folder);
  const named = await run('check', join(folder, 'plain.json.txt'));

  expect([empty.code, hidden.code, named.code]).toEqual([1, 1, 1]);
  expect(empty.out).toMatch(/There is no tree in this folder\./);
  for (const { out } of [hidden, named])
    expect(out).toMatch(/does not end in \.json, .* Call it plain\.json; /);
});
