// A package as its user has it: installed without a network into an empty place, and a whole job done with it.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const onWindows = process.platform === 'win32';

/** Runs in an empty home: nothing of this machine's npm or settings is read. Throws where it fails. */
function runIn(place, command, args, input = '') {
  const home = join(place, 'home');
  const { status, stdout, stderr } = spawnSync(command, args, {
    cwd: place,
    input,
    encoding: 'utf8',
    shell: onWindows,
    env: {
      PATH: `${dirname(process.execPath)}${onWindows ? ';' : ':'}${process.env.PATH}`,
      HOME: home,
      APPDATA: home,
      LOCALAPPDATA: home,
    },
  });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}: ${stderr}`);
  return stdout;
}

/** @returns what `verify` says of the record of the job */
export function tryOut(place, tarball) {
  const prefix = join(place, 'prefix');
  mkdirSync(join(place, 'home'), { recursive: true });
  const flags = ['--global', '--offline', '--no-audit', '--no-fund', '--prefix', prefix];
  runIn(place, 'npm', ['install', ...flags, tarball]);
  const droplight = (args, input) =>
    runIn(place, join(prefix, onWindows ? 'droplight.cmd' : 'bin/droplight'), args, input);
  const complaint = ['--own', 'Wipers stop half way', '--vehicle', 'Orchard van'];
  const path = droplight(['open', ...complaint]).trim();
  const job = JSON.parse(readFileSync(join(import.meta.dirname, 'job.json'), 'utf8'));
  droplight(['enter', path], job.map((action) => JSON.stringify(action)).join('\n'));
  const account = droplight(['write', path]);
  if (account.trim() === '') throw new Error('write named no file');
  return droplight(['verify', path]).trim();
}
