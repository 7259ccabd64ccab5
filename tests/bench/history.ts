// History over many generated sessions: read anew with its progress, then from the index.
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { generateShop } from '../helpers/shop-folder.ts';

const say = (line: string): void => void process.stdout.write(`${line}\n`);
const count = Number(process.argv[2] ?? 10_000);
const folder = process.argv[3] ?? mkdtempSync(join(tmpdir(), 'droplight-shop-'));
const sessions = join(folder, 'sessions');
mkdirSync(sessions, { recursive: true });

if (readdirSync(sessions).length === 0) generateShop(sessions, count);
const bytes = readdirSync(sessions).reduce(
  (all, one) => all + statSync(join(sessions, one)).size,
  0,
);
say(`${readdirSync(sessions).length} files, ${(bytes / 1e6).toFixed(0)} MB`);

function timed(name: string, args: readonly string[], target: string): void {
  const start = performance.now();
  const ran = spawnSync(
    process.execPath,
    ['.build/droplight.js', 'history', '--sessions', sessions, ...args],
    { encoding: 'utf8', maxBuffer: 1e9 },
  );
  const seconds = (performance.now() - start) / 1000;
  const told = ran.stderr.split('\n').filter((line) => line !== '').length;
  say(
    `${name.padEnd(22)} ${seconds.toFixed(2)} s (target: ${target}); progress told ${told} times; exit ${ran.status}`,
  );
}

rmSync(join(sessions, 'history.index'), { force: true });
timed('made anew', [], 'under 60 s');
timed('from the index', [], 'under 2 s');
timed('the same as JSON', ['--json'], 'under 2 s');
if (process.argv[3] === undefined) rmSync(folder, { recursive: true, force: true });
