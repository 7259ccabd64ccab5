// Shared by start and test: plain JavaScript that any Node from 18 on can run before anything is installed.
import { spawnSync } from 'node:child_process';
import { existsSync, lstatSync, readdirSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = resolve(dirname(fileURLToPath(import.meta.url)), '..');
const bin = join(root, 'node_modules', '.bin');
const onWindows = process.platform === 'win32';

function stop(line) {
  process.stderr.write(`${line}\n`);
  process.exit(3);
}

const fit = (version) => {
  const [major = 0, minor = 0] = version.replace('v', '').split('.').map(Number);
  return major > 22 || (major === 22 && minor >= 13);
};

/** Newest change below a folder, or 0 when it is not there. */
function newest(path) {
  if (!existsSync(path)) return 0;
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(found.mtimeMs, ...readdirSync(path).map((name) => newest(join(path, name))));
}

/** Installs what a package-lock.json names, once; quiet unless it fails. */
function installIn(folder, told) {
  const modules = join(folder, 'node_modules');
  // A link leads to another copy's packages, which npm would empty: they serve as they are.
  if (lstatSync(modules, { throwIfNoEntry: false })?.isSymbolicLink()) return;
  const mark = join(modules, '.package-lock.json');
  if (newest(mark) >= newest(join(folder, 'package-lock.json'))) return;
  process.stderr.write(told);
  const npm = onWindows ? 'npm.cmd' : 'npm';
  const done = spawnSync(
    npm,
    ['ci', '--include=dev', '--loglevel=error', '--no-audit', '--no-fund'],
    {
      cwd: folder,
      stdio: ['ignore', 2, 'inherit'],
      shell: onWindows,
    },
  );
  if (done.status !== 0)
    stop(
      'Setting up failed: npm could not install the packages. Check the network and run the same command again.',
    );
}

/** What the program needs to be built and run. */
export function install() {
  if (Number(process.versions.node.split('.')[0]) < 18)
    stop(
      `Droplight needs Node 20 or newer to set itself up; this is ${process.version}. Install a newer Node and run the same command again.`,
    );
  installIn(root, 'Setting up (once, about a minute) ...\n');
}

/** Libraries by other hands that only the outside checks need: each folder below tests/reference. */
export function installReferences() {
  const references = join(root, 'tests', 'reference');
  const folders = [references, ...readdirSync(references).map((name) => join(references, name))];
  for (const folder of folders)
    if (existsSync(join(folder, 'package-lock.json')))
      installIn(folder, 'Fetching what the outside checks are held against (once) ...\n');
}

/** The Node that runs everything else: the installed one, or this one if it is new enough. */
export function fitNode() {
  const own = join(bin, onWindows ? 'node.exe' : 'node');
  if (existsSync(own)) return own;
  if (fit(process.version)) return process.execPath;
  return stop(
    `No fit Node: Droplight runs on Node 22.13 or newer, this is ${process.version} and the packaged one did not install. Install Node 22 or newer.`,
  );
}

/** Runs a script with the fit Node and passes its exit code on. */
export function run(args, { env = {} } = {}) {
  const done = spawnSync(fitNode(), args, {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...env, PATH: bin + (onWindows ? ';' : ':') + process.env.PATH },
  });
  return done.status ?? 3;
}

export function buildIfStale() {
  const built = newest(join(root, '.build', 'droplight.js'));
  if (built > Math.max(newest(join(root, 'src')), newest(join(root, 'trees')))) return 0;
  return run([join(root, '.scripts', 'build.mjs')]);
}
