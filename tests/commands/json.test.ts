import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { commandNamed, commands } from '../../src/commands/table.ts';
import { screens } from '../../src/commands/screens.ts';
import type { Command } from '../../src/commands/io.ts';
import { open } from '../../src/commands/open.ts';
import { begin } from '../helpers/begun.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

/** Calls that must be refused, by the command that they call. */
const badCalls: Readonly<Record<string, readonly string[]>> = {
  sessions: ['--loud', '--sessions', '--trees', '--sessions=file.txt'],
  open: [
    '',
    'nope --vehicle x',
    'rough-idle',
    'rough-idle --vehicle x --altitude high',
    'rough-idle --vehicle x --facts wings=two',
    'rough-idle --vehicle x --sheet vacuum',
    'rough-idle --vehicle x --trees nowhere',
    'rough-idle --vehicle x --sessions file.txt/below',
    'broken.json --vehicle x',
    '--loud',
  ],
  practice: [
    '',
    'nope',
    'a b',
    'no-supply --cause nope',
    'no-supply --set nope.json',
    '--set nope.json --number 1',
    'set',
    'set no-supply --count few --out set.json',
    'compare',
    'compare nope',
    '--loud',
  ],
  history: ['--sessions=file.txt', 'a --loud', '--loud'],
  records: ['', '--out file.txt', '--out file.txt/below', 'a --out tables', '--loud'],
  vehicles: ['paint', 'show', 'show nope', 'new', 'edit nope engine=v8', 'done nope', '--loud'],
  enter: ['', 'nope', 'torn', 'a b', '--loud'],
  story: ['', 'nope', 'torn', 'folder', 'a b', '--loud'],
  advise: ['', 'nope', 'torn', 'folder', 'a b', '--loud'],
  write: ['', 'nope', 'torn', 'a b', 'nope --voice she', '--loud'],
  review: ['', 'nope', 'torn', 'folder', '--loud'],
  verify: ['', 'nope', 'nope --against x', '--loud'],
  trees: [
    'nope',
    'list --loud',
    'list --trees nowhere',
    'new a b',
    'shop --loud',
    'check nope.json',
    'check broken.json',
    'check list.txt',
    'tell',
    'tell nope',
    'table nope',
    'upgrade nope.json',
    'plan nope',
    'plan rough-idle --runs few',
    'draw nope',
    'schema --loud',
  ],
  feed: [
    '',
    'nope',
    'brakes',
    'no-supply --with nope',
    'no-supply --with bulkhead=lots',
    'no-supply --load nope',
    'no-supply --netlist',
    'no-supply a',
    '--loud',
  ],
  figure: [
    'nope',
    'dwell dwell=600',
    'dwell cylinders',
    'dwell nope=3',
    'dwell dwell=3 dwell=4',
    'tire-size tire=wide',
    'load-test volts=12 volts=13',
    '--loud',
  ],
  paint: ['', 'nope', '--loud'],
  help: ['nope', '--loud'],
  completion: ['', 'nope', '--loud'],
};

const rows = Object.entries(badCalls).flatMap(([name, calls]) =>
  calls.map((call) => [name, call.split(' ').filter((word) => word !== '')] as const),
);

/** A folder with what the bad calls name. */
function strewn(): string {
  const folder = scratch();
  mkdirSync(join(folder, 'sessions', 'folder.jsonl'), { recursive: true });
  writeFileSync(join(folder, 'sessions', 'torn.jsonl'), '{"format":1,"id":"to');
  writeFileSync(join(folder, 'broken.json'), '{"format":1,');
  writeFileSync(join(folder, 'list.txt'), 'a');
  writeFileSync(join(folder, 'file.txt'), 'a');
  return folder;
}

type Told = { readonly problems: readonly { readonly code: string }[] };

const toldIn = (out: string): unknown => (JSON.parse(out) as Told).problems;

const problem: unknown = expect.objectContaining({
  code: expect.stringMatching(/^[A-Za-z-]+$/),
  message: expect.stringMatching(/\S\.$/),
  mend: expect.stringMatching(/\S/),
});

test('every command is called wrongly here', () => {
  expect(Object.keys(commands).filter((name) => !(name in badCalls))).toEqual([]);
});

test.each(rows)('%s %j with --json is one document of problems', async (name, words) => {
  const command = await commandNamed(name);
  const called = await runCommand(command, [...words, '--json'], { folder: strewn() });

  expect(called.code).not.toBe(0);
  expect(toldIn(called.out)).toEqual(expect.arrayContaining([problem]));
});

test.each(rows.filter(([name]) => name !== 'trees'))(
  '%s %j without --json tells its problems on standard error alone',
  async (name, words) => {
    if (name === 'feed' && words.includes('--netlist')) return;
    const command = await commandNamed(name);
    const called = await runCommand(command, words, { folder: strewn() });

    expect([called.code === 0, called.out]).toEqual([false, '']);
    expect(called.err).toMatch(/^droplight: \S/);
  },
);

test.each(['home', 'start', 'resume', 'replay'] as const)(
  'the screens called for by a script are refused in JSON: %s',
  async (first) => {
    const command: Command = (io, args) => screens(io, args, first);
    const { code, out } = await runCommand(command, ['nope', '--json']);

    expect(code).toBe(2);
    expect(toldIn(out)).toEqual([problem]);
  },
);

test('a fault of the program is one document too, and goes on to whoever runs it', async () => {
  let out = '';
  const faulty: Command = () => Promise.reject(new Error('a wheel came off'));
  const running = runCommand(faulty, ['--json'], {
    heard: (text) => {
      out += text;
    },
  });

  await expect(running).rejects.toThrow('a wheel came off');
  expect(JSON.parse(out)).toMatchObject({
    problems: [{ code: 'fault', message: expect.stringContaining('a wheel came off') as string }],
  });
});

test('open --json tells the session by the name that other commands take, and its path', async () => {
  const { out, code } = await runCommand(open, [...begin, '--json']);
  const { session, path } = JSON.parse(out) as { session: string; path: string };

  expect(code).toBe(0);
  expect(session).toBe('2026-04-11-1042-orchard-van-no-supply');
  expect(path).toMatch(/sessions[\\/]2026-04-11-1042-orchard-van-no-supply\.jsonl$/);
});
