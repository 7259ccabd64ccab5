import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { delimiter, join, resolve } from 'node:path';
import { expect, test } from 'vitest';
import { completion } from '../../src/commands/completion.ts';
import { everyUse } from '../../src/commands/calls.ts';
import { help } from '../../src/commands/help.ts';
import { commandNamed, commands } from '../../src/commands/table.ts';
import { verbs } from '../../src/commands/trees/verbs.ts';
import { uses } from '../../src/commands/uses.ts';
import { bindings } from '../../src/app/pages/table.ts';
import { runCommand, scratch } from '../helpers/commands.ts';

const rows = [...Object.entries(everyUse), ...Object.entries(verbs)];

test('help has a row for every command', async () => {
  const { code, out } = await runCommand(help, []);

  expect(code).toBe(0);
  expect(Object.keys(everyUse).filter((name) => !out.includes(`\n  droplight ${name}`))).toEqual(
    [],
  );
});

// Eighty columns: the width of a terminal as it comes, common practice, no source.
test.each([
  [[]],
  [['all']],
  [['keys']],
  [['trees']],
  ...Object.keys(everyUse).map((name) => [[name]]),
  ...Object.keys(verbs).map((verb) => [['trees', verb]]),
])('help %s fits eighty columns', async (words) => {
  const { out } = await runCommand(help, words);

  expect(out.split('\n').filter((line) => line.length > 80)).toEqual([]);
});

test.each(Object.keys(everyUse).filter((name) => name !== 'trees'))(
  'help %s gives the whole call and an example',
  async (name) => {
    const { out } = await runCommand(help, [name]);

    expect(out).toContain(`droplight ${name}`);
    expect(out).toContain('For example: ');
    for (const option of Object.keys(everyUse[name]?.options ?? {}))
      expect(out).toContain(`--${option}`);
  },
);

test.each(Object.keys(verbs))('help trees %s gives the whole call and an example', async (verb) => {
  const { out } = await runCommand(help, ['trees', verb]);

  expect(out).toContain(`droplight trees ${verb}`);
  expect(out).toContain('For example: droplight trees ');
});

test.each(rows)(
  'the call of %s tells each of its options and begins with its word',
  (name, row) => {
    const told = [...row.use.matchAll(/--([a-z-]+)/g)].map(([, option = '']) => option);

    expect(`${row.use} `).toMatch(new RegExp(`^(trees )?${name} `));
    expect(told.toSorted()).toEqual(Object.keys(row.options).toSorted());
    expect(Object.keys(row.values ?? {}).filter((one) => !(one in row.options))).toEqual([]);
  },
);

test('every command that is told can be called', () => {
  expect(Object.keys(commands)).toEqual(Object.keys(uses));
});

test('help keys has every key of every screen, as the screens tell it', async () => {
  const { out } = await runCommand(help, ['keys']);

  const told = out.replace(/\s+/g, ' ');

  expect(bindings.filter(({ about }) => !told.includes(about))).toEqual([]);
});

test.each([
  ['a command', 'help', ['wriet'], 'write'],
  ['an option', 'sessions', ['--jsn'], '--json'],
  ['a tree', 'open', ['no-suply', '--vehicle', 'Van'], 'no-supply'],
  ['a figure', 'figure', ['dwel', 'a=1'], 'dwell'],
  ['a verb', 'trees', ['chek'], 'check'],
  ['a cause', 'feed', ['no-supply', '--with', 'bulkead'], 'bulkhead'],
  ['a load', 'feed', ['no-supply', '--load', 'blowr'], 'blower'],
  ['a verb of vehicles', 'vehicles', ['shwo', 'Van'], 'show'],
  ['a shell', 'completion', ['bahs'], 'bash'],
])('a slip in %s is told with the word that was meant', async (_, name, args, meant) => {
  const { code, err } = await runCommand(await commandNamed(name), args);

  expect([code, err]).toEqual([2, expect.stringMatching(new RegExp(`Did you mean [^?]*${meant}`))]);
});

test.each([
  ['nothing', [''], ['completion', 'open', 'start', 'write']],
  ['the beginning of a command', ['ver'], ['verify']],
  ['a command and a tree', ['open', 'no-s'], ['no-supply']],
  ['an option', ['write', 'x', '--vo'], ['--voice']],
  ['the value of an option', ['write', 'x', '--voice', 'w'], ['we']],
  ['the value of an option behind a sign', ['write', 'x', '--for', '=', 'm'], ['mentor']],
  ['a verb', ['trees', 'sch'], ['schema']],
  ['a figure', ['figure', 'dwell-fr'], []],
  ['a session', ['write', 'here'], ['here-1']],
  ['an option with its value in one word', ['write', 'S', '--as=h'], ['--as=html']],
  ['the value of an option', ['--sessions', 'S', 'rep'], ['replay']],
  ['a word that is a verb', ['trees', 'draw', 'no-su'], ['no-supply']],
])('completion offers after %s', async (_, typed, expected) => {
  const folder = scratch();
  mkdirSync(join(folder, 'sessions'));
  writeFileSync(join(folder, 'sessions', 'here-1.jsonl'), '');

  const { out } = await runCommand(completion, ['words', '--', ...typed], { folder });
  const found = out.split('\n').slice(0, -1);

  expect(found.filter((word) => expected.includes(word))).toEqual(expected);
  expect(found.filter((word) => !word.startsWith(typed.at(-1) ?? ''))).toEqual([]);
});

// The shell itself completes, by the program in its place.
test('completion offers what a call takes once no second time', async () => {
  const offered = async (...typed: readonly string[]) => {
    const { out } = await runCommand(completion, ['words', '--', ...typed]);
    return out;
  };

  expect(await offered('start', 'no-sup')).toBe('no-supply\n');
  expect(await offered('start', 'no-start', 'no-sup')).toBe('');
});

test.skipIf(process.platform === 'win32')('bash completes by the lines it is given', async () => {
  const folder = scratch();
  const program = `#!/bin/sh\nexec ${process.execPath} --disable-warning=ExperimentalWarning ${resolve('src/main.ts')} "$@"\n`;
  writeFileSync(join(folder, 'droplight'), program, { mode: 0o755 });
  const { out } = await runCommand(completion, ['bash']);
  const typed = `${out}COMP_WORDS=(droplight trees dr) COMP_CWORD=2; _droplight; echo "\${COMPREPLY[@]}"`;

  const { stdout } = spawnSync('bash', ['-c', typed], {
    encoding: 'utf8',
    env: { ...process.env, PATH: `${folder}${delimiter}${process.env['PATH'] ?? ''}` },
  });

  expect(stdout).toBe('draw\n');
});
