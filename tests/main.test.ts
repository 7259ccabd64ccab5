import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, mkdirSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { version } from '../src/core/version.ts';
import { scratch } from './helpers/commands.ts';

const main = ['--disable-warning=ExperimentalWarning', 'src/main.ts'];

/** The program itself, as a shell would start it, without a terminal. */
function run(args: readonly string[], { input = '', node = [] as readonly string[] } = {}) {
  const settings = { ...process.env, DROPLIGHT_SETTINGS: scratch() };
  const { status, stdout, stderr } = spawnSync(process.execPath, [...node, ...main, ...args], {
    input,
    encoding: 'utf8',
    env: settings,
  });
  return { status, out: stdout, err: stderr };
}

test('--version and --help end with 0; is the same as help', () => {
  expect(run(['--version'])).toEqual({ status: 0, out: `${version}\n`, err: '' });
  const { status, out } = run(['--help']);

  expect(status).toBe(0);
  expect(out).toBe(run(['help']).out);
});

test('a command that did its work ends with 0', () => {
  expect(run(['sessions', '--sessions', scratch(), '--json'])).toEqual({
    status: 0,
    out: '[]\n',
    err: '',
  });
});

test('options may stand before the command and mean the same', () => {
  const folder = scratch();
  const after = run(['sessions', '--sessions', folder, '--json']);

  expect(run(['--sessions', folder, '--json', 'sessions'])).toEqual(after);
  expect(run([`--sessions=${folder}`, 'sessions', '--json'])).toEqual(after);
  expect(run(['--sessions', folder, 'paint']).err).toMatch(/There is no command "paint"/);
});

test('a command that found what it looked for ends with 1', () => {
  const folder = scratch();
  writeFileSync(join(folder, 'a.jsonl'), 'torn');

  const { status, out } = run(['verify', 'a', '--sessions', folder]);

  expect([status, out]).toEqual([1, expect.stringMatching(/^unreadable: /)]);
});

test.each([
  ['a word that is no command', ['paint'], /There is no command "paint"/],
  ['a name that every object has', ['constructor'], /There is no command "constructor"/],
  ['an option that is not', ['sessions', '--loud'], /--loud/],
  ['a tree that is not', ['open', 'nothing', '--vehicle', 'Van'], /There is no tree "nothing"/],
])('%s ends with 2 and one line on standard error', (_, args, words) => {
  const { status, out, err } = run(args);

  expect([status, out]).toEqual([2, '']);
  expect(err).toMatch(words);
  expect(err.trim().split('\n')).toHaveLength(1);
});

test('what the system refuses ends with 3', () => {
  const folder = scratch();
  mkdirSync(join(folder, 'a.jsonl'));

  const { status, err } = run(['story', 'a', '--json', '--sessions', folder]);

  expect([status, err]).toEqual([3, expect.stringMatching(/This is no regular file/)]);
});

test('a word that is no command is one JSON document too, and names what is near', () => {
  const { status, out } = run(['storry', '--json']);

  expect(status).toBe(2);
  expect(JSON.parse(out)).toMatchObject({
    problems: [{ code: 'unknown-command', mend: expect.stringContaining('story') as string }],
  });
});

// `true` reads nothing and is gone before there is anything to read.
test.skipIf(process.platform === 'win32')('a reader that leaves early changes no exit code', () => {
  const file = join(scratch(), 'bad.json');
  writeFileSync(file, '{"format":2,');
  const check = `${process.execPath} --disable-warning=ExperimentalWarning src/main.ts trees check`;
  const { stdout } = spawnSync('bash', ['-c', `${check} ${file} | true; echo \${PIPESTATUS[0]}`], {
    encoding: 'utf8',
  });

  expect(stdout).toBe('1\n');
});

describe('enter', () => {
  const begun = (folder: string): string =>
    run(['open', 'no-supply', '--vehicle', 'Van', '--sessions', folder]).out.trim();

  test('with a folder in place of its lines says so', () => {
    const folder = scratch();
    const stdin = openSync(folder, 'r');

    const { status, stdout } = spawnSync(process.execPath, [...main, 'enter', begun(folder)], {
      stdio: [stdin, 'pipe', 'pipe'],
      encoding: 'utf8',
    });

    closeSync(stdin);
    expect([status, stdout]).toEqual([3, expect.stringContaining('"code":"EISDIR"')]);
  });

  test('whose answers nobody reads any more takes all that it was given', async () => {
    const path = begun(scratch());
    const one = spawn(process.execPath, [...main, 'enter', path]);
    one.stdout.destroy();
    one.stdin.end('{"do":"note","text":"x"}\n'.repeat(200));

    expect(await once(one, 'close')).toEqual([0, null]);
    expect(readFileSync(path, 'utf8').split('"kind":"noted"')).toHaveLength(201);
  });
});
