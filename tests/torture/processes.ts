import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSession } from '../../src/store/recover.ts';
import { sessionLines } from '../helpers/session-file.ts';
import { pool, sleep, untilSaid, type Child } from './children.ts';
import { chance, folderFor, pick, type Size, type Tried } from './lib.ts';

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

const signals = ['SIGKILL', 'SIGKILL', 'SIGKILL', 'SIGTERM', 'SIGHUP', 'SIGINT'] as const;

/** Lets it write, and kills it: behind some notes, or at any moment from the opening on. */
async function killed(one: Child, random: () => number): Promise<void> {
  if (random() < 0.7) await untilSaid(one, 'kept ', 1 + Math.floor(random() * 20));
  await sleep(random() * 10);
  if (random() < 0.1) {
    one.kill('SIGSTOP');
    await sleep(5);
    one.kill('SIGCONT');
  }
  one.kill(pick(random, signals));
  await one.ended;
}

/** A writer killed by a signal at a random moment, again and again on one file. */
export async function kills({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const folder = folderFor('kills');
  const path = join(folder, 'job.jsonl');
  const failures: string[] = [];
  const children = await pool();
  let [acknowledged, silent] = [0, 0];
  let before: readonly string[] = [];
  for (let tries = 0; tries < count; tries += 1) {
    if (tries % 50 === 0) {
      writeFileSync(path, sessionLines([]).join(''));
      before = [];
    }
    const one = await children.next();
    one.tell(`write ${path} 1000000 w${tries}`);
    await killed(one, random);
    const { texts, wrong } = found(path);
    const kept = one.kept();
    acknowledged += kept.length;
    if (kept.length === 0) silent += 1;
    const there = new Set(texts);
    const lost = [...before, ...kept].filter((text) => !there.has(text));
    const refused = one.lines().filter((line) => /^(?:refused|stopped)/.test(line));
    if (lost.length > 0) failures.push(`kill ${tries}: lost ${lost.join()}`);
    failures.push(...[...wrong, ...refused].map((words) => `kill ${tries}: ${words}`));
    before = texts;
  }
  await children.close();
  rmSync(folder, { recursive: true });
  if (silent > count / 2)
    failures.push(`${silent} of ${count} kept nothing before they were killed`);
  const seen = `${acknowledged} acknowledged, ${silent} killed before the first`;
  return { attack: 'kills', tries: count, failures, seen };
}

/** Two or three writers of one file, its lock removed under them: what each was told as kept must be there. */
export async function writers({ seed, count }: Size): Promise<Tried> {
  const random = chance(seed);
  const failures: string[] = [];
  const children = await pool();
  let [acknowledged, refused] = [0, 0];
  for (let tries = 0; tries < count; tries += 1) {
    const folder = folderFor('writers');
    const path = join(folder, 'job.jsonl');
    writeFileSync(path, sessionLines([]).join(''));
    const all: Child[] = [];
    while (all.length < 2 + (tries % 2)) all.push(await children.next());
    all.forEach((one, at) => one.tell(`write ${path} 30 w${at}`));
    if (tries % 3 > 0) {
      await Promise.race(all.map((one) => untilSaid(one, 'kept ', 1 + Math.floor(random() * 10))));
      rmSync(`${path}.lock`, { force: true });
    }
    for (const one of all) one.leave();
    await Promise.all(all.map(({ ended }) => ended));
    const { texts, wrong } = found(path);
    const kept = all.flatMap((one) => one.kept());
    acknowledged += kept.length;
    refused += all.filter((one) => one.lines().some((line) => /refused|stopped/.test(line))).length;
    const lost = kept.filter((text) => !texts.includes(text));
    if (lost.length > 0) failures.push(`round ${tries}: lost ${lost.join()}`);
    if (kept.length === 0) failures.push(`round ${tries}: nobody kept anything`);
    failures.push(...wrong.map((words) => `round ${tries}: ${words}`));
    rmSync(folder, { recursive: true });
  }
  await children.close();
  const seen = `${acknowledged} acknowledged, ${refused} writers refused`;
  return { attack: 'two and three writers', tries: count, failures, seen };
}

/** Three sessions begun at once, of one name, in a folder that is not there yet: each gets a name of its own. */
export async function openings({ count }: Size): Promise<Tried> {
  const folder = folderFor('openings');
  const failures: string[] = [];
  const children = await pool();
  const all = [await children.next(), await children.next(), await children.next()];
  for (let tries = 0; tries < count; tries += 1) {
    for (const one of all) one.tell(`open ${join(folder, 'new', String(tries))}`);
    await Promise.all(all.map((one) => untilSaid(one, '', tries + 2)));
    const said = all.map((one) => one.lines().at(-1) ?? '');
    const made = new Set(said.filter((line) => line.startsWith('made ')));
    if (made.size !== all.length) failures.push(`round ${tries}: ${said.join(', ')}`);
  }
  for (const one of all) one.leave();
  await Promise.all(all.map(({ ended }) => ended));
  await children.close();
  rmSync(folder, { recursive: true });
  return {
    attack: 'three openings at once',
    tries: count,
    failures,
    seen: `${count * 3} sessions`,
  };
}
