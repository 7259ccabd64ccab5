import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { enter } from '../../src/commands/enter.ts';
import { open } from '../../src/commands/open.ts';
import { screens } from '../../src/commands/screens.ts';
import { sessions } from '../../src/commands/sessions.ts';
import { story } from '../../src/commands/story.ts';
import { trees } from '../../src/commands/trees/trees.ts';
import { write } from '../../src/commands/write.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { takeLock } from '../../src/store/lock.ts';
import { runCommand, scratch } from '../helpers/commands.ts';
import { answers, begin, begun, said } from '../helpers/begun.ts';
import { readingsFolder } from '../helpers/readings.ts';

test('open prints the path of a session named by day, time, vehicle and tree', async () => {
  const { path } = await begun();

  expect(path).toMatch(/sessions[\\/]2026-04-11-1042-orchard-van-no-supply\.jsonl$/);
});

test('a second session of the same minute gets a name of its own', async () => {
  const { folder } = await begun();

  const { out } = await runCommand(open, begin, { folder });

  expect(out.trim()).toMatch(/no-supply-2\.jsonl$/);
});

test.each<[title: string, args: readonly string[], line: RegExp]>([
  ['an unknown tree', ['no-supper', '--vehicle', 'x'], /no tree "no-supper".*no-supply/],
  ['no vehicle', ['no-supply'], /name of the vehicle.*Use: droplight open/],
  ['an unknown option', ['no-supply', '--vehicel', 'x'], /Unknown option '--vehicel'.*--vehicle/],
  ['an altitude that is no number', ['no-supply', '--vehicle', 'x', '--altitude', 'high'], /high/],
  [
    'an altitude that cannot be',
    ['no-supply', '--vehicle', 'x', '--altitude', '90000ft'],
    /lies outside/,
  ],
  [
    'a 6 V vehicle on a tree with the bands of 12 V',
    ['no-supply', '--vehicle', 'x', '--facts', 'volts=6-volt'],
    /Written for 12 V: it judges 6 V wrong\./,
  ],
  ['an unknown fact', ['no-supply', '--vehicle', 'x', '--facts', 'wings=two'], /no fact "wings"/],
  [
    'a folder of trees that is not there',
    ['no-supply', '--vehicle', 'x', '--trees', 'nowhere'],
    /no folder of trees/,
  ],
])('open with %s says so in one line and exits 2', async (_, args, line) => {
  const { code, out, err } = await runCommand(open, args);

  expect(code).toBe(2);
  expect(out).toBe('');
  expect(err).toMatch(line);
  expect(err.trim().split('\n')).toHaveLength(1);
});

const onReadings = (sheet: string) =>
  runCommand(open, [
    'weak-runner',
    '--trees',
    resolve(readingsFolder),
    '--vehicle',
    'Van',
    '--sheet',
    sheet,
  ]);

test('figures of the own book go into the session, with where they were read', async () => {
  const { out } = await onReadings('idle-vacuum = 61 kPa (shop manual (red), page 12);');
  const header: unknown = JSON.parse(readFileSync(out.trim(), 'utf8').split('\n')[0] ?? '');

  expect(header).toMatchObject({
    vehicle: {
      sheet: {
        'idle-vacuum': {
          value: 61,
          unit: 'kPa',
          typed: '61 kPa',
          where: 'shop manual (red), page 12',
        },
      },
    },
  });
});

test.each([
  ['idle-vacuum', /"idle-vacuum" is not a number/],
  ['idle-vacuum=', /"idle-vacuum=" is not a number/],
  ['dwell=55', /Possible: idle-vacuum/],
])('the sheet "%s" is refused in one line', async (sheet, line) => {
  const { code, err } = await onReadings(sheet);

  expect(code).toBe(2);
  expect(err).toMatch(line);
});

test('a temperature below zero is the value of its option', async () => {
  const { out } = await runCommand(open, [...begin.slice(0, 5), '--temperature', '-5C']);

  expect(readFileSync(out.trim(), 'utf8').split('\n')[0]).toContain(
    '"temperature":{"value":-5,"unit":"C","typed":"-5C"}',
  );
});

test('enter takes actions a line at a time and answers each, on the disk', async () => {
  const { folder, path } = await begun();

  const { code, out } = await runCommand(enter, [path], {
    folder,
    lines: said(
      { do: 'find', check: 'lamps-horn', result: 'dead' },
      { do: 'find', check: 'bat-rest-volts', reading: '12.6 V' },
      { do: 'note', text: 'typed in afterwards', told: '2026-04-11T09:00:00+00:00' },
    ),
  });

  expect(code).toBe(0);
  expect(answers(out).map(({ ok }) => ok)).toEqual([true, true, true]);
  const kept = readFileSync(path, 'utf8').trim().split('\n');
  expect(kept.at(-1)).toContain('"told":"2026-04-11T09:00:00+00:00"');
});

test.each<[title: string, action: object, code: string]>([
  ['a check that is not there', { do: 'find', check: 'flux', result: 'dead' }, 'unknown-check'],
  [
    'a result that is not there',
    { do: 'find', check: 'lamps-horn', result: 'blue' },
    'unknown-result',
  ],
  [
    'a reading that is no number',
    { do: 'find', check: 'bat-rest-volts', reading: 'lots' },
    'reading-not-a-number',
  ],
  [
    'a reading in the wrong unit',
    { do: 'find', check: 'bat-rest-volts', reading: '15 inHg' },
    'reading-unit-wrong',
  ],
  [
    'an implausible reading',
    { do: 'find', check: 'bat-rest-volts', reading: '240 V' },
    'implausible',
  ],
  ['a proof before a repair', { do: 'prove', result: 'works' }, 'no-repair'],
  ['closing as fixed without a proof', { do: 'close', as: 'fixed' }, 'no-repair'],
  ['an action that is none', { do: 'dance' }, 'wrong-action'],
  ['a key that is none', { do: 'note', text: 'x', loud: true }, 'wrong-action'],
  ['a correction of nothing', { do: 'correct', n: 99, result: 'dead' }, 'no-such-event'],
])('enter refuses %s, keeps the rest and exits 2', async (_, action, problem) => {
  const { folder, path } = await begun();

  const { code, out } = await runCommand(enter, [path], {
    folder,
    lines: said(action, { do: 'note', text: 'still here' }),
  });

  expect(code).toBe(2);
  const [first, second] = answers(out);
  expect(first).toMatchObject({ ok: false, problem: { code: problem } });
  expect(second).toMatchObject({ ok: true });
});

test('an implausible reading can be insisted on', async () => {
  const { folder, path } = await begun();

  const { code } = await runCommand(enter, [path], {
    folder,
    lines: said({ do: 'find', check: 'bat-rest-volts', reading: '17 V', insist: true }),
  });

  expect(code).toBe(0);
});

test('a session open elsewhere is refused and says by whom; it can still be read', async () => {
  const { folder, path } = await begun();
  const lock = takeLock(nodeFiles, path, 'process 4711 on bench');

  const entered = await runCommand(enter, [path], { folder });
  const read = await runCommand(story, [path, '--json'], { folder });

  expect(entered.code).toBe(3);
  expect(entered.err).toContain('open already, in process 4711 on bench');
  expect(read.code).toBe(0);
  if (lock.kind === 'held') lock.release();
});

test('a foreign file is no session, in one line', async () => {
  const folder = scratch();
  writeFileSync(join(folder, 'list.jsonl'), '{"a":1}\n');

  const { code, err } = await runCommand(story, ['list.jsonl', '--json'], { folder });

  expect(code).toBe(2);
  expect(err).toContain('no session file of Droplight');
});

test('a session that is not there is said to be missing', async () => {
  const { code, err } = await runCommand(write, ['nothing']);

  expect(code).toBe(2);
  expect(err).toContain('no session "nothing"');
});

test('a folder that cannot be written to is said so, exit 3', async () => {
  const files = {
    ...nodeFiles,
    create: () => {
      throw Object.assign(new Error('read-only'), { code: 'EROFS' });
    },
  };

  const { code, err } = await runCommand(open, begin, { files });

  expect(code).toBe(3);
  expect(err).toContain('read-only');
});

test('the screens without a terminal say what to use instead, exit 2', async () => {
  const { code, err } = await runCommand((io, args) => screens(io, args, 'home'), []);

  expect(code).toBe(2);
  expect(err).toContain('droplight enter');
});

test('sessions lists what is there, newest first, and says so when nothing is', async () => {
  const { folder } = await begun();

  expect((await runCommand(sessions, [], { folder })).out).toContain('open: check');
  expect((await runCommand(sessions, [])).out).toContain('There is no session');
});

test('trees list names the trees; a broken file is told and exits 1', async () => {
  const folder = scratch();
  mkdirSync(join(folder, 'mine'));
  writeFileSync(join(folder, 'mine', 'bad.json'), '{"format":1,');

  const good = await runCommand(trees, ['list']);
  const bad = await runCommand(trees, ['list', '--trees', 'mine'], { folder });

  expect(good.out).toMatch(/^no-supply +electrical +Key turned/m);
  expect([good.code, bad.code]).toEqual([0, 1]);
  expect(bad.err).toContain('bad.json');
});
