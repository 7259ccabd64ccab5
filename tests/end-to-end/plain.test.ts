import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { scratch } from '../helpers/commands.ts';
import { began, mended, proven } from '../helpers/plain.ts';
import { buildApart, runInTerminal, type Shown } from '../helpers/pseudo-terminal.ts';

let program = '';
beforeAll(async () => {
  program = await buildApart();
}, 60_000);
afterAll(() => rmSync(dirname(dirname(program)), { recursive: true }));

const escape = '\u001b';
const inShell = (line: string, folder: string): Shown =>
  runInTerminal(['/bin/sh', '-c', line], folder);
const node = () => `'${process.execPath}' '${program}'`;

test('a whole job from complaint to account through a pipe has zero escape bytes', () => {
  const folder = scratch();
  const { stdout, stderr, status } = spawnSync(process.execPath, [program, '--plain'], {
    cwd: folder,
    input: `${[...began, ...mended, ...proven].join('\n')}\n`,
    encoding: 'utf8',
    env: { ...process.env, DROPLIGHT_SETTINGS: join(folder, 'settings') },
  });

  expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
  // oxlint-disable-next-line no-control-regex -- control bytes are what must not be there
  expect(stdout).not.toMatch(/[\0-\x09\x0b-\x1f\x7f-\x9f]/);
  const sessions = join(folder, 'sessions');
  const account = readdirSync(sessions).find((name) => name.endsWith('.md')) ?? '';
  expect(readFileSync(join(sessions, account), 'utf8')).toContain('gray-film');
}, 120_000);

test.each([
  ['TERM=dumb', () => `TERM=dumb ${node()}`],
  ['a screen reader', () => `INK_SCREEN_READER=true ${node()}`],
  ['what is printed into a log', () => `${node()} | cat`],
])(
  'lines come by themselves with %s, and end with the input',
  async (_, command) => {
    const folder = scratch();
    const shown = inShell(command(), folder);

    await shown.until('Quit (q)');
    shown.type('horse\r');
    await shown.until('"horse" means nothing here.');
    shown.type('\u0004');
    await shown.exited;
    expect(shown.raw()).not.toContain(escape);
  },
  60_000,
);

test('lines typed before their question answer no claim, and a stop by Ctrl+C keeps the job', async () => {
  const folder = scratch();
  mkdirSync(join(folder, 'sessions'));
  const shown = inShell(`TERM=dumb ${node()}`, folder);

  await shown.until('Quit (q)');
  for (const line of began) shown.type(`${line}\r`);
  await shown.until('Press 1 when you have read it');
  // One read, as a paste is: the second line was there before its page.
  shown.type('1\ry\r');
  await shown.until('Not taken: that key came before its page was drawn.');
  shown.type('\u0003');
  await shown.exited;
  expect(shown.raw()).toContain('resume with: droplight resume');
  const [name = ''] = readdirSync(join(folder, 'sessions')).filter((file) =>
    file.endsWith('.jsonl'),
  );
  const kinds = readFileSync(join(folder, 'sessions', name), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => String((JSON.parse(line) as { kind: unknown }).kind));
  expect(kinds).toEqual(['check-begun', 'paused']);
}, 90_000);
