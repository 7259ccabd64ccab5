import { Journal } from '../../src/store/journal.ts';
import type { StoreError } from '../../src/store/files.ts';
import { readSession } from '../../src/store/recover.ts';
import { MemoryFiles, type Refusal } from './memory-files.ts';
import { eventsOf, note, readBack, sessionLines } from './session-file.ts';

export const path = 'jobs/job.jsonl';

/** A journal over a session with a header only, on a disk that a test can hurt. */
export function openJournal(files = new MemoryFiles({ [path]: sessionLines([]).join('') })) {
  const read = readSession(files.read(path), path);
  if (read.kind === 'bad') throw new Error('the bench file does not read');
  const kept: number[] = [];
  const troubles: StoreError[] = [];
  const losses: string[] = [];
  /** Notes every event that was said to be kept and that a power loss now would take. */
  const hold = (upTo: number, by: string) => {
    const left = eventsOf(files.afterPowerLoss(path) ?? '').map(({ n }) => n);
    for (let n = 1; n <= upTo; n += 1) if (!left.includes(n)) losses.push(`${by}: event ${n} lost`);
  };
  const { bytes, link } = read.value;
  const journal = new Journal(
    files,
    { path, handle: files.openAppend(path), bytes, link, assureLock: () => {} },
    {
      kept: (n) => {
        kept.push(n);
        hold(n, 'kept');
      },
      trouble: (error) => troubles.push(error),
    },
  );
  files.calls.length = 0;
  return { files, journal, kept, troubles, losses, hold };
}

/** Lets everything that waits go on, as far as it can. */
export const turn = () => new Promise((resolve) => setImmediate(resolve));

/** A gate that holds each background sync until it is opened. */
export function gated(files: { gate: () => Promise<void> }) {
  const waiting: (() => void)[] = [];
  files.gate = () => new Promise((open) => waiting.push(open));
  return { waiting, open: () => waiting.shift()?.() };
}

type Bench = ReturnType<typeof openJournal>;

/** Settles as `enter` does; what it promises is held against the disk. */
async function settle({ journal, hold }: Bench, upTo: number, how: 'settled' | 'settle') {
  try {
    if (how === 'settle') journal.settle();
    else await journal.settled();
    hold(upTo, how);
    return true;
  } catch {
    return false;
  }
}

/** How a run goes about it: bytes a write takes at most, and whether it also settles by blocking. */
export type Manner = { readonly atOnce?: number; readonly blocking?: boolean };

/**
 * Six events, singly and in a burst, on a disk that refuses some calls; then a key is pressed until
 * everything is kept.
 */
async function runWith(refuse: Refusal, { atOnce = Infinity, blocking = false }: Manner) {
  const how = blocking ? 'settle' : 'settled';
  const bench = openJournal();
  const { files, journal } = bench;
  files.refuse = refuse;
  files.atOnce = atOnce;
  journal.append(note(1));
  journal.append(note(2));
  await settle(bench, 2, 'settled');
  journal.append(note(3));
  await settle(bench, 3, how);
  journal.append(note(4));
  await settle(bench, 4, 'settled');
  journal.append(note(5));
  journal.append(note(6));
  await settle(bench, 6, how);
  let calm = false;
  for (let press = 0; press < 12 && !calm; press += 1) calm = await settle(bench, 6, 'settled');
  return {
    calls: files.calls.length,
    refused: files.calls.filter((call) => refuse(call) !== undefined).length,
    outcome: {
      calm,
      losses: [...new Set(bench.losses)],
      file: readBack(files.text(path)),
      left: readBack(files.afterPowerLoss(path) ?? ''),
    },
  };
}

const whole = { events: [1, 2, 3, 4, 5, 6], damage: [], openEnd: false };

/** What every run must come to. */
const allKept = { calm: true, losses: [], file: whole, left: whole };

/**
 * Runs with a fault planted at the first call, the second, ... until one goes by in which it never
 * came up.
 */
export async function sweep(plant: (nth: number) => Refusal, manner: Manner = {}) {
  const failures: unknown[] = [];
  const always = (await runWith(plant(Infinity), manner)).refused;
  for (let nth = 1; nth < 500; nth += 1) {
    const run = await runWith(plant(nth), manner);
    if (JSON.stringify(run.outcome) !== JSON.stringify(allKept))
      failures.push({ nth, ...run.outcome });
    if (run.refused === always) return { runs: nth, failures };
  }
  throw new Error('no run went by untouched');
}

/** Refuses the n-th call of one kind and `times - 1` calls of it after that. */
export function failKind(name: string, nth: number, code: string, times = 1): Refusal {
  let met = 0;
  const seen = new Map<number, number>();
  return (call) => {
    if (call.name !== name) return undefined;
    const place = seen.get(call.number) ?? (met += 1);
    seen.set(call.number, place);
    return place >= nth && place < nth + times ? code : undefined;
  };
}

/** Both refusals in one: what the one lets pass the other may refuse. */
export const either =
  (...refusals: readonly Refusal[]): Refusal =>
  (call) =>
    refusals.map((refuse) => refuse(call)).find((code) => code !== undefined);
