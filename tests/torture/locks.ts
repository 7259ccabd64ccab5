import { execFileSync } from 'node:child_process';
import * as fs from 'node:fs';
import { join } from 'node:path';
import { nodeFiles } from '../../src/store/node-files.ts';
import { openSession } from '../../src/store/sessions.ts';
import { note, readBack, sessionLines } from '../helpers/session-file.ts';
import { chance, folderFor, pick, type Size, type Tried } from './lib.ts';
import { watch } from './watch.ts';

type Harm = (lock: string, random: () => number) => void;

const bytes = (random: () => number, length: number): Buffer =>
  Buffer.from(Array.from({ length }, () => Math.floor(random() * 256)));

/** A lock as SQLite leaves it, with some of its bytes changed or the end cut off. */
function spoil(lock: string, random: () => number): void {
  const whole = fs.readFileSync(lock);
  const cut = whole.subarray(
    0,
    random() < 0.5 ? whole.length : Math.floor(random() * whole.length),
  );
  for (let changes = 0; changes < 3 && cut.length > 0; changes += 1)
    cut[Math.floor(random() * Math.min(cut.length, 200))] = Math.floor(random() * 256);
  fs.writeFileSync(lock, cut);
}

/** What may stand in place of the lock, or of what SQLite keeps beside it, before it is asked for one. */
const harms: Readonly<Record<string, Harm>> = {
  spoilt: spoil,
  'any bytes': (lock, random) => fs.writeFileSync(lock, bytes(random, 5000)),
  empty: (lock) => fs.writeFileSync(lock, ''),
  'a folder': (lock) => {
    fs.rmSync(lock);
    fs.mkdirSync(lock);
  },
  'a pipe': (lock) => {
    fs.rmSync(lock);
    execFileSync('mkfifo', [lock]);
  },
  'a link': (lock) => {
    fs.rmSync(lock);
    fs.symlinkSync(`${lock}.victim`, lock);
  },
  'a journal of any bytes': (lock, random) =>
    fs.writeFileSync(`${lock}-journal`, bytes(random, 600)),
  'a journal that is a folder': (lock) => fs.mkdirSync(`${lock}-journal`),
  'a journal that is a pipe': (lock) => execFileSync('mkfifo', [`${lock}-journal`]),
  'a journal that is a link': (lock) => fs.symlinkSync(`${lock}.victim`, `${lock}-journal`),
  'a log that is a folder': (lock) => fs.mkdirSync(`${lock}-wal`),
};

/** SQLite's own files spoilt, replaced or in its way: the session opens and keeps, or is refused in words. */
export function spoiltLocks({ seed, count }: Size): Tried {
  const random = chance(seed);
  const failures: string[] = [];
  const slow: string[] = [];
  let [opened, refused] = [0, 0];
  const disk = { files: nodeFiles, holder: 'torture' };
  const quiet = { kept: () => {}, trouble: () => {} };
  for (let tries = 0; tries < count; tries += 1) {
    const folder = folderFor('locks');
    const path = join(folder, 'job.jsonl');
    const lock = `${path}.lock`;
    fs.writeFileSync(path, sessionLines([]).join(''));
    const first = openSession(disk, path, quiet);
    if (first.kind === 'good') first.value.release();
    fs.writeFileSync(`${lock}.victim`, 'precious');
    const harm = pick(random, Object.keys(harms));
    harms[harm]?.(lock, random);
    const spent = watch();
    try {
      const again = openSession(disk, path, quiet);
      if (again.kind === 'bad') refused += 1;
      else {
        opened += 1;
        again.value.journal.commit([note(1)]);
        const second = openSession(disk, path, quiet);
        if (second.kind === 'good') failures.push(`${harm}: two writers`);
        again.value.release();
        if (readBack(fs.readFileSync(path)).events?.join() !== '1') failures.push(`${harm}: lost`);
      }
    } catch (error) {
      failures.push(`${harm}: crash: ${String(error)}`);
    }
    if (spent() > 1) slow.push(`${harm}: over 1 s`);
    if (fs.readFileSync(`${lock}.victim`, 'utf8') !== 'precious')
      failures.push(`${harm}: a link was followed`);
    fs.rmSync(folder, { recursive: true });
  }
  const seen = `${opened} opened, ${refused} refused, ${Object.keys(harms).length} kinds of harm`;
  return { attack: "SQLite's files spoilt", tries: count, failures, slow, seen };
}
