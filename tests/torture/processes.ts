import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readSession } from '../../src/store/recover.ts';
import { sessionLines } from '../helpers/session-file.ts';
import { chance, folderFor, pick, type Size, type Tried } from './lib.ts';

const child = resolve(import.meta.dirname, 'child.ts');

function writer(path: string, most: number, name: string) {
  const one = spawn(process.execPath, [child, path, String(most), name], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let said = '';
  one.stdout.on('data', (data: Buffer) => (said += data.toString()));
  const ended = once(one, 'close');
  const kept = (): readonly string[] =>
    said
      .split('\n')
      .slice(0, -1)
      .flatMap((line) => (line.startsWith('kept ') ? [line.slice(5)] : []));
  return { one, ended, kept, said: () => said };
}

/** The notes of a record, in their order, and what is wrong with it. */
function found(path: string): { texts: readonly string[]; wrong: readonly string[] } {
  const read = readSession(readFileSync(path), path);
  if (read.kind === 'bad') return { texts: [], wrong: ['the record does not read'] };
  return {
    texts: read.value.events.flatMap((event) => (event.kind === 'noted' ? [event.text] : [])),
    wrong: read.value.damage
      .filter(({ kind }) => kind !== 'torn')
      .map(({ line, kind }) => `line ${line} ${kind}`),
  };
}

const sleep = (after: number): Promise<void> =>
  new Promise((done) => {
    setTimeout(done, after);
  });

async function untilKept(one: ReturnType<typeof writer>, least: number): Promise<void> {
  while (one.kept().length < least && one.one.exitCode === null && one.one.signalCode === null)
    await sleep(1);
}

/** A writer killed by a signal at a random moment, again and again on one file. */
export async function kills({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const folder = folderFor('kills');
  const path = join(folder, 'job.jsonl');
  const failures: string[] = [];
  const signals = ['SIGKILL', 'SIGKILL', 'SIGKILL', 'SIGTERM', 'SIGHUP', 'SIGINT'] as const;
  let acknowledged = 0;
  for (let tries = 0; tries < count; tries += 1) {
    if (tries % 50 === 0) writeFileSync(path, sessionLines([]).join(''));
    const before = found(path).texts;
    const one = writer(path, 1_000_000, `w${tries}`);
    await untilKept(one, 1 + Math.floor(random() * 20));
    await sleep(random() * 10);
    if (random() < 0.1) {
      one.one.kill('SIGSTOP');
      await sleep(5);
      one.one.kill('SIGCONT');
    }
    one.one.kill(pick(random, signals));
    await one.ended;
    const { texts, wrong } = found(path);
    const kept = one.kept();
    acknowledged += kept.length;
    const lost = [...before, ...kept].filter((text) => !texts.includes(text));
    if (kept.length === 0) failures.push(`kill ${tries}: nothing was kept: ${one.said()}`);
    if (lost.length > 0) failures.push(`kill ${tries}: lost ${lost.join()}`);
    failures.push(...wrong.map((words) => `kill ${tries}: ${words}`));
  }
  rmSync(folder, { recursive: true });
  return { attack: 'kills', tries: count, failures, seen: `${acknowledged} acknowledged` };
}

/** Two or three writers of one file, its lock removed under them: what each was told as kept must be there. */
export async function writers({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  let [acknowledged, refused] = [0, 0];
  for (let tries = 0; tries < count; tries += 1) {
    const folder = folderFor('writers');
    const path = join(folder, 'job.jsonl');
    writeFileSync(path, sessionLines([]).join(''));
    const all = Array.from({ length: 2 + (tries % 2) }, (_, at) => writer(path, 30, `w${at}`));
    if (tries % 3 > 0) {
      await Promise.race(all.map((one) => untilKept(one, 1 + Math.floor(random() * 10))));
      rmSync(`${path}.lock`, { force: true });
    }
    await Promise.all(all.map(({ ended }) => ended));
    const { texts, wrong } = found(path);
    const kept = all.flatMap((one) => one.kept());
    acknowledged += kept.length;
    refused += all.filter((one) => /refused|stopped/.test(one.said())).length;
    const lost = kept.filter((text) => !texts.includes(text));
    if (lost.length > 0) failures.push(`round ${tries}: lost ${lost.join()}`);
    failures.push(...wrong.map((words) => `round ${tries}: ${words}`));
    rmSync(folder, { recursive: true });
  }
  const seen = `${acknowledged} acknowledged, ${refused} writers refused`;
  return { attack: 'two and three writers', tries: count, failures, seen };
}
