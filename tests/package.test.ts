import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, readdirSync, realpathSync, rmSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { platform, tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildProgram } from '../.scripts/build.mjs';
import { said } from './helpers/begun.ts';

const place = realpathSync(mkdtempSync(join(tmpdir(), 'droplight-packed-')));
afterAll(() => rmSync(place, { recursive: true }));

const onWindows = platform() === 'win32';
const copy = join(place, 'copy');
const prefix = join(place, 'prefix');
const needed = await buildProgram({ outdir: join(copy, '.build') });
for (const name of ['package.json', 'README.md', 'LICENSE', 'CHANGELOG.md', 'trees', 'src'])
  cpSync(name, join(copy, name), { recursive: true });

/** A word of a shell in an empty home: nothing of this machine's npm or settings is read. */
function shell(command: string, args: readonly string[], input = '') {
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: copy,
    input,
    encoding: 'utf8',
    shell: onWindows,
    env: {
      PATH: `${dirname(process.execPath)}${onWindows ? ';' : ':'}${process.env['PATH']}`,
      HOME: join(place, 'home'),
      APPDATA: join(place, 'home'),
      LOCALAPPDATA: join(place, 'home'),
    },
  });
  return { status, out: stdout, err: stderr };
}

// Packed without its scripts: the bundle of this test is the one that `prepack` would make.
const packed = shell('npm', ['pack', '--json', '--ignore-scripts', '--offline']);
const [tarball] = JSON.parse(packed.out) as readonly [
  { readonly filename: string; readonly files: readonly { readonly path: string }[] },
];
const installed = shell('npm', [
  'install',
  '--global',
  '--offline',
  '--no-audit',
  '--no-fund',
  '--prefix',
  prefix,
  join(copy, tarball.filename),
]);
const droplight = (args: readonly string[], input = '') =>
  shell(join(prefix, onWindows ? 'droplight.cmd' : 'bin/droplight'), args, input);

/** The same that a release is tried out with. */
const job = JSON.parse(readFileSync('.scripts/release/job.json', 'utf8')) as readonly object[];

test('the built program needs nothing but Node', () => {
  expect(needed.length).toBeGreaterThan(0);
  expect(needed.filter((name) => !isBuiltin(name))).toEqual([]);
  expect(JSON.parse(readFileSync('package.json', 'utf8'))).not.toHaveProperty('dependencies');
});

test('the package holds the bundle, trees, schemas, what must be read, and nothing else', () => {
  const paths = tarball.files.map(({ path }) => path);
  const shown = new Set(paths.map((path) => path.replace(/^\.build\/.*\.js$/, '.build/*.js')));

  expect([...shown].toSorted()).toEqual(
    [
      '.build/*.js',
      '.build/LICENCES.txt',
      '.build/bin.cjs',
      'CHANGELOG.md',
      'LICENSE',
      'README.md',
      'package.json',
      ...readdirSync('src/guide').map((name) => `src/guide/${name}`),
      ...readdirSync('trees').map((name) => `trees/${name}`),
    ].toSorted(),
  );
});

test('the licences name every package of the bundle, each with a text', () => {
  const parts = readFileSync(join(copy, '.build', 'LICENCES.txt'), 'utf8').split(/^-{78}$/m);
  const named = parts.slice(1).map((part) => part.trim().split(' ')[0]);

  expect(named).toEqual(expect.arrayContaining(['ink', 'react', 'yoga-layout', 'zod']));
  expect(parts.slice(1).filter((part) => !/permission/i.test(part))).toEqual([]);
});

test('installed offline into an empty prefix it does a whole job', () => {
  expect([installed.status, installed.err]).toEqual([0, '']);
  const begun = droplight(['open', '--own', 'Wipers stop half way', '--vehicle', 'Orchard van']);
  const path = begun.out.trim();

  expect(begun.status).toBe(0);
  expect(begun.err).toBe(
    `Jobs are kept in ${dirname(path)}; the settings, or --sessions DIR, name another folder.\n`,
  );
  expect(path.startsWith(join(place, 'home'))).toBe(true);
  const entered = droplight(['enter', path], said(...job).join('\n'));

  expect([entered.status, entered.err]).toEqual([0, '']);
  expect(droplight(['write', path])).toMatchObject({ status: 0, err: '' });
  expect(droplight(['verify', path]).status).toBe(0);
  const next = droplight(['open', 'no-supply', '--vehicle', 'Orchard van']);

  expect([next.status, next.err]).toEqual([0, '']);
});

// The program gives itself out for an older one before its first word is read.
test('a Node that is too old is told so', () => {
  const asOld = `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '20.20.2' } })`;
  const { status, err } = shell(process.execPath, [
    '--import',
    `data:text/javascript,${encodeURIComponent(asOld)}`,
    join(copy, '.build', 'bin.cjs'),
    'sessions',
  ]);

  expect([status, err]).toEqual([
    3,
    'droplight: Node 20.20.2 is too old. Install Node 22.13 or newer.\n',
  ]);
});

test('what an older Node calls an experiment is not said, and other warnings are', () => {
  const warning = (words: string, kind: string) =>
    `setImmediate(() => process.emitWarning(${JSON.stringify(words)}, ${JSON.stringify(kind)}));`;
  const both = warning('an experiment', 'ExperimentalWarning') + warning('a change', 'Warning');
  const { status, err } = shell(process.execPath, [
    '--import',
    `data:text/javascript,${encodeURIComponent(both)}`,
    join(copy, '.build', 'bin.cjs'),
    'trees',
    'list',
  ]);

  expect(status).toBe(0);
  expect(err).toContain('a change');
  expect(err).not.toContain('an experiment');
});
