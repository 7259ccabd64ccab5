import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Event } from '../../src/core/session/event.ts';
import { clockOddities, stretchOver } from '../../src/core/session/time.ts';
import type { Files } from '../../src/store/files.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { readSession } from '../../src/store/recover.ts';
import { openSession, type HeldSession } from '../../src/store/sessions.ts';
import { note, readBack, sessionLines } from '../helpers/session-file.ts';
import { chance, folderFor, pick, type Size, type Tried } from './lib.ts';

const quiet = { kept: () => {}, trouble: () => {} };

/** Cuts and flips of a session of every kind of line: none may be taken for whole. */
export function bytes({ seed, count }: Size): Tried {
  const lines = sessionLines();
  const whole = Buffer.from(lines.join(''));
  const ends = new Set(lines.map((_, at) => Buffer.byteLength(lines.slice(0, at + 1).join(''))));
  const random = chance(seed);
  const failures: string[] = [];
  let tries = 0;
  const every = Math.max(1, Math.ceil((whole.length * 5) / count));
  const told = (changed: Buffer): boolean => {
    tries += 1;
    const read = readSession(changed, 'job.jsonl');
    return read.kind === 'bad' || read.value.damage.length > 0 || read.value.openEnd;
  };
  for (let at = Math.floor(random() * every); at < whole.length; at += every) {
    if (!told(whole.subarray(0, at)) && !ends.has(at)) failures.push(`cut at ${at} is whole`);
    for (const mask of [1, 0x20, 0x80, 1 + Math.floor(random() * 255)]) {
      const changed = Buffer.from(whole);
      changed[at] = (changed[at] ?? 0) ^ mask;
      if (!told(changed)) failures.push(`byte ${at} changed by ${mask} is whole`);
    }
  }
  return { attack: 'bytes cut and flipped', tries, failures, seen: `${whole.length} bytes` };
}

const codes = ['ENOSPC', 'EIO', 'EACCES', 'short'] as const;
type Code = (typeof codes)[number];

const calls = [
  'create',
  'openAppend',
  'write',
  'size',
  'placeOf',
  'placeAt',
  'truncate',
  'syncNow',
  'close',
  'sizeOf',
  'read',
  'readOpen',
  'makeFolder',
  'syncFolder',
  'rename',
  'link',
  'remove',
] as const satisfies readonly (keyof Files)[];

/** This disk, whose n-th call and some behind it are refused, or written short. */
function refusing(from: number, times: number, code: Code) {
  let made = 0;
  const files: Files = { ...nodeFiles };
  for (const name of calls) {
    const call = nodeFiles[name] as (...given: unknown[]) => unknown;
    const refused = (...given: unknown[]): unknown => {
      made += 1;
      if (made < from || made >= from + times) return call(...given);
      if (code !== 'short') throw Object.assign(new Error('planted'), { code });
      const [handle, data] = given;
      return name === 'write' && data instanceof Uint8Array
        ? call(handle, data.subarray(0, Math.ceil(data.length / 3)))
        : call(...given);
    };
    Object.assign(files, { [name]: refused });
  }
  return { files, made: () => made };
}

type Outcome = { readonly wrong: string[]; readonly kept: string[]; refusals: number };

/** Opens, keeps three notes, each tried until it is taken, and leaves; on the real disk. */
function keepThree(path: string, files: Files): Outcome {
  const outcome: Outcome = { wrong: [], kept: [], refusals: 0 };
  for (let tries = 0; tries < 8 && outcome.kept.length < 3; tries += 1) {
    const opened = openSession({ files, holder: 'torture' }, path, quiet);
    if (opened.kind === 'bad') outcome.refusals += 1;
    else keepSome(opened.value, `try ${tries}`, outcome);
  }
  const file = readFileSync(path);
  for (const text of outcome.kept)
    if (!file.includes(`"text":"${text}"`)) outcome.wrong.push(`${text} lost`);
  const { damage = [] } = readBack(file);
  if (damage.some((one) => !one.includes('torn'))) outcome.wrong.push(`called ${damage.join()}`);
  return outcome;
}

/** Keeps notes until there are three or one is refused, and leaves. */
function keepSome({ journal, recovered, path, release }: HeldSession, at: string, to: Outcome) {
  let last = recovered.events.at(-1)?.n ?? 0;
  while (to.kept.length < 3) {
    const text = `${to.kept.length + 1} at ${at}`;
    try {
      journal.commit([note(last + 1, text)]);
      to.kept.push(text);
      last += 1;
    } catch (error) {
      to.refusals += 1;
      const isTold = error instanceof Error && error.message.includes('it may stand');
      if (!isTold && readFileSync(path, 'utf8').includes(text))
        to.wrong.push(`${text} refused, kept`);
      break;
    }
  }
  release();
}

/** The n-th call refused, for n from 1 until a run goes by untouched, with every code and several lengths. */
export function failingCalls({ count }: Size): Tried {
  const folder = folderFor('calls');
  const failures: string[] = [];
  let [tries, refusals] = [0, 0];
  for (const code of codes)
    for (const times of [1, 2, 5, 1000])
      for (let from = 1; tries < count; from += 1) {
        const path = join(folder, `${code}-${times}-${from}.jsonl`);
        writeFileSync(path, sessionLines([]).join(''));
        const { files, made } = refusing(from, times, code);
        const run = keepThree(path, files);
        tries += 1;
        refusals += run.refusals;
        failures.push(...run.wrong.map((one) => `${code} x ${times} from call ${from}: ${one}`));
        if (made() < from) break;
      }
  rmSync(folder, { recursive: true });
  return { attack: 'n-th call refused', tries, failures, seen: `${refusals} refusals` };
}

/** Notes with random stamps: the clock goes back, jumps, sleeps, changes its zone. */
export function clocks({ seed, count }: Size): Tried {
  const random = chance(seed);
  const failures: string[] = [];
  const zones = ['+00:00', '-11:00', '+10:30', '+14:00', 'Z'] as const;
  const times = ['2016-12-31T23:59:60.000', '2026-03-29T01:59:59.999', '1970-01-01T00:00:00.000'];
  for (let tries = 0; tries < count; tries += 1) {
    const at = `${pick(random, times)}${pick(random, zones)}`;
    const stamp = { at, run: pick(random, ['a', 'b']), mono: random() * 1e9, up: random() * 1e9 };
    const problem = clockFailure([note(1), { ...note(2), ...stamp }, note(3)]);
    if (problem !== undefined) failures.push(`${at}: ${problem}`);
  }
  return { attack: 'clocks', tries: count, failures, seen: `${times.length * zones.length} times` };
}

function clockFailure(events: readonly Event[]): string | undefined {
  const minutes = stretchOver(events).worked / 60;
  if (!(minutes >= 0)) return `${minutes} minutes`;
  return clockOddities(events).some(({ after }) => after < 1 || after > 2)
    ? 'an oddity behind no event'
    : undefined;
}
