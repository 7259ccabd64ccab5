import { rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { storyJson } from '../../src/commands/story.ts';
import { accountOf } from '../../src/commands/write.ts';
import { safeJson } from '../../src/core/text.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { readSession } from '../../src/store/recover.ts';
import { openSession } from '../../src/store/sessions.ts';
import { aWalk, chained, note, readBack, sessionLines } from '../helpers/session-file.ts';
import { after, headerFor } from '../helpers/story.ts';
import { chance, driving, folderFor, hostileText, pick, type Size, type Tried } from './lib.ts';
import { watch } from './watch.ts';

const values = [null, -1, 0, 1e308, 2 ** 53, '', 'x', [], {}, true] as const;

/** A value with one place in it made into something else. */
export function mutated(value: unknown, random: () => number): unknown {
  if (typeof value !== 'object' || value === null || random() < 0.1)
    return random() < 0.5 ? hostileText(random) : pick(random, values);
  const entries = Object.entries(value);
  const [key] = entries.length === 0 ? ['x'] : pick(random, entries);
  const changed = entries
    .filter(([name]) => name !== key || random() < 0.85)
    .map(([name, one]) => [name, name === key ? mutated(one, random) : one] as const);
  return Array.isArray(value) ? changed.map(([, one]) => one) : Object.fromEntries(changed);
}

/** Sessions with one or two places changed and every link forged anew: told of, never fallen over. */
export function forged({ seed, count }: Size): Tried {
  const random = chance(seed);
  const header = headerFor();
  const events = after(aWalk, header).events;
  const failures: string[] = [];
  const slow: string[] = [];
  let read = 0;
  for (let tries = 0; tries < count; tries += 1) {
    const all: object[] = [header, ...events];
    const at = Math.floor(random() * all.length);
    const one = mutated(all[at], random);
    const lines = chained(all.with(at, typeof one === 'object' && one !== null ? one : { one }));
    const spent = watch();
    try {
      const session = readSession(Buffer.from(lines.join('')), 'job.jsonl');
      if (session.kind === 'bad') continue;
      read += 1;
      if (driving.test(safeJson(storyJson(session.value), 2)))
        failures.push(`escape at try ${tries}`);
      if (driving.test(accountOf(session.value).markdown)) failures.push(`escape at try ${tries}`);
    } catch (error) {
      failures.push(`try ${tries}, line ${at + 1}: ${String(error)}`);
    }
    if (spent() > 1) slow.push(`try ${tries}: over 1 s`);
  }
  return {
    attack: 'forged sessions',
    tries: count,
    failures,
    slow,
    seen: `${read} read as sessions`,
  };
}

const megabytes = (): number => {
  globalThis.gc?.();
  return process.memoryUsage().rss / 2 ** 20;
};

/** Many events in one process, through the journal: memory and the time an answer takes stay as they were. */
export function longDay({ count }: Size): Tried {
  const folder = folderFor('long');
  const path = join(folder, 'job.jsonl');
  writeFileSync(path, sessionLines([]).join(''));
  const opened = openSession({ files: nodeFiles, holder: 'torture' }, path, {
    kept: () => {},
    trouble: () => {},
  });
  if (opened.kind === 'bad') throw new Error('a good session does not open');
  const early = Math.min(1000, Math.ceil(count / 10));
  let [base, early50, late] = [0, 0, 0];
  const times: number[] = [];
  for (let n = 1; n <= count; n += 1) {
    const spent = watch();
    opened.value.journal.commit([note(n)]);
    if (n <= early || n > count - early) times.push(spent() * 1000);
    if (n === early) base = megabytes();
  }
  late = megabytes();
  opened.value.release();
  const median = (some: readonly number[]): number =>
    some.toSorted((one, other) => one - other)[Math.floor(some.length / 2)] ?? 0;
  early50 = median(times.slice(0, early));
  const size = statSync(path).size / 2 ** 20;
  const seen = `${base.toFixed(0)} MB after ${early}, ${late.toFixed(0)} MB at the end (x ${(late / base).toFixed(2)}), median ${early50.toFixed(2)} then ${median(times.slice(-early)).toFixed(2)} ms, file ${size.toFixed(1)} MB`;
  const failures = late / base > 1.3 ? [seen] : [];
  const end = nodeFiles.read(path);
  const { damage = [], events = [] } = readBack(end);
  if (events.length !== count || damage.length > 0) failures.push('the record is not whole');
  rmSync(folder, { recursive: true });
  return { attack: 'a long day', tries: count, failures, seen };
}
