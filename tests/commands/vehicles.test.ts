import { existsSync, mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { vehicles as vehiclesCommand } from '../../src/commands/vehicles.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { unsafeLeft } from '../../src/store/vehicles.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

let home = '';
beforeEach(() => {
  home = scratch();
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

const commands = { open, enter, vehicles: vehiclesCommand };
const run = (
  [name, ...words]: readonly [keyof typeof commands, ...string[]],
  lines: readonly string[] = [],
) => runCommand(commands[name], words, { folder: home, lines });
const vehicles = (...words: readonly string[]) => run(['vehicles', ...words]);
const file = () => join(home, 'sessions', 'vehicles', 'orchard-van.json');
const begun = (...words: readonly string[]) =>
  run(['open', 'rough-idle', '--vehicle', 'Orchard van', ...words]);

test('a vehicle is made, changed, shown and listed', async () => {
  expect(await vehicles()).toMatchObject({ code: 0, out: expect.stringMatching(/no vehicle/) });
  expect((await vehicles('new', 'Orchard van', 'year=1968', 'body=pickup')).code).toBe(0);
  expect((await vehicles('edit', 'orchard VAN', 'cylinders=six', 'odometer=61,200 mi')).code).toBe(
    0,
  );
  expect((await vehicles()).out).toBe('Orchard van: 1968 pickup\n');
  const { out } = await vehicles('show', 'Orchard van');
  expect(out).toContain('How many cylinders? six   [cylinders]');
  expect(out).toContain('Odometer 61200 mi, 2026-');
});

test('a line that is refused changes nothing, nor do those before it', async () => {
  await vehicles('new', 'Orchard van', 'year=1968');
  const before = readFileSync(file(), 'utf8');

  expect(await vehicles('edit', 'Orchard van', 'body=pickup', 'year=old')).toMatchObject({
    code: 2,
    err: 'droplight: "old" is no year. Type it with four digits, such as 1968.\n',
  });
  expect(readFileSync(file(), 'utf8')).toBe(before);
});

test.each([
  [['show', 'Barn truck'], 'no vehicle "Barn truck" here. Known: Orchard van.'],
  [['new', 'orchard van'], 'a vehicle "Orchard van" already'],
  [['edit', 'Orchard van', 'pickup'], 'is no line of a vehicle'],
  [['polish', 'Orchard van'], 'Say what to do'],
  [['show'], 'Say what to do'],
  [['new', 'x'.repeat(501)], 'Say it in fewer words'],
  [['done', 'Orchard van', 'none', '3'], 'left that to do. Nothing is left to do.'],
])('%s is refused in a line', async (words, told) => {
  await vehicles('new', 'Orchard van');
  const ran = await vehicles(...words);

  expect(ran.code).toBe(2);
  expect(ran.err).toContain(told);
  expect(ran.err.trim().split('\n')).toHaveLength(1);
});

test('one bad file is told and hides no other vehicle', async () => {
  await vehicles('new', 'Orchard van');
  writeFileSync(join(home, 'sessions', 'vehicles', 'barn.json'), '{"format": 1, "name": 7}');
  mkdirSync(join(home, 'sessions', 'vehicles', 'folder.json'));
  const ran = await vehicles();

  expect(ran).toMatchObject({ code: 0, out: 'Orchard van\n' });
  expect(ran.err).toContain('barn.json');
  expect(ran.err).toContain('folder.json');
});

test('a job leaves what it was told of the vehicle; the next one takes it over', async () => {
  await begun('--facts', 'cylinders=six', '--sheet', 'idle-vacuum=18 inHg (plate)');
  expect(JSON.parse(readFileSync(file(), 'utf8'))).toMatchObject({
    name: 'Orchard van',
    facts: { cylinders: 'six' },
    sheet: { 'idle-vacuum': { value: 18, where: 'plate' } },
  });
  await vehicles('edit', 'Orchard van', 'engine=straight six');
  const second = (await run(['open', 'no-start', '--vehicle', 'orchard van'])).out.trim();
  const header: unknown = JSON.parse(readFileSync(second, 'utf8').split('\n')[0] ?? '');

  expect(header).toMatchObject({
    vehicle: {
      name: 'Orchard van',
      engine: 'straight six',
      facts: { cylinders: 'six' },
      sheet: { 'idle-vacuum': { value: 18 } },
    },
  });
  expect(readdirSync(join(home, 'sessions', 'vehicles'))).toEqual(['orchard-van.json']);
});

test('a vehicle known to have 6 V begins no job that would judge it by 12 V', async () => {
  await vehicles('new', 'Orchard van', 'volts=6-volt');
  const ran = await run(['open', 'battery-drain', '--vehicle', 'Orchard van']);

  expect(ran).toMatchObject({ code: 2, err: expect.stringContaining('Written for 12 V') });
  expect(readdirSync(join(home, 'sessions'))).toEqual(['vehicles']);
});

test('what a job left to do is shown, the unsafe first, until it is said to be done', async () => {
  const path = (await begun()).out.trim();
  await run(
    ['enter', path],
    [
      '{"do":"follow-up","text":"look at the grommet"}',
      '{"do":"follow-up","text":"brake hose cracked","urgency":"unsafe"}',
      '{"do":"close","as":"given-up"}',
    ],
  );
  const shown = (await vehicles('show', 'Orchard van')).out;
  const [, session = '', n = ''] = /brake hose cracked {3}\[(\S+) (\d+)\]/.exec(shown) ?? [];

  expect(shown).toMatch(
    /given up[\s\S]*Before it is driven: brake hose[\s\S]*Noticed on the way: look/,
  );
  expect(unsafeLeft(nodeFiles, join(home, 'sessions'))).toEqual([
    'Orchard van: brake hose cracked',
  ]);
  expect((await vehicles('done', 'Orchard van', session, n)).code).toBe(0);
  expect(unsafeLeft(nodeFiles, join(home, 'sessions'))).toEqual([]);
  const after = (await vehicles('show', 'Orchard van')).out;
  expect(after).not.toContain('brake hose');
  expect(after).toContain('look at the grommet');
  expect(JSON.parse((await vehicles('show', 'Orchard van', '--json')).out)).toMatchObject({
    jobs: [{ ended: 'given-up', left: [{ text: 'look at the grommet' }] }],
  });
});

test('what a job left is said to be done although its vehicle has no file yet', async () => {
  const path = (await begun()).out.trim();
  await run(['enter', path], ['{"do":"follow-up","text":"brake hose cracked","urgency":"unsafe"}']);
  rmSync(file());

  expect((await vehicles('show', 'orchard van')).out).toContain('brake hose cracked');
  const [, n = ''] = / (\d+)\]$/m.exec((await vehicles('show', 'orchard van')).out) ?? [];
  expect((await vehicles('done', 'Orchard van', basename(path, '.jsonl'), n)).code).toBe(0);
  expect(unsafeLeft(nodeFiles, join(home, 'sessions'))).toEqual([]);
});

test('a job begins although the folder of the vehicles cannot be written to', async () => {
  mkdirSync(join(home, 'sessions'));
  writeFileSync(join(home, 'sessions', 'vehicles'), 'a file, no folder');
  const ran = await begun();

  expect(ran.code).toBe(0);
  expect(existsSync(ran.out.trim())).toBe(true);
  expect(ran.err).toMatch(/vehicles/);
});
