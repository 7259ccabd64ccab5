import { join } from 'node:path';
import * as z from 'zod';
import { Job, jobApart, type Apart } from '../core/jobs/job.ts';
import { jobOf } from '../core/jobs/tally.ts';
import { firstOf, type Parsed, type Problem } from '../core/problem.ts';
import { safeJson } from '../core/text.ts';
import { attempt, type Age, type Files } from './files.ts';
import { ending, listSessions, type Listed } from './find.ts';
import { sha256 } from './recover.ts';
import type { Shelf } from './shelf.ts';
import { loadSession } from './sessions.ts';
import { writeWhole } from './whole-file.ts';

/** The index beside the sessions: it saves reading them anew, and is never the truth. */
export const indexFile = 'history.index';

/** Raised with every change of what a job comes to: an index made by other rules is made anew. */
const rules = 1;

/** The first line: by what the rows were made, and the hash of the rows as they were written. */
const Head = z.object({ index: z.literal('jobs'), rules: z.literal(rules), rows: z.string() });

/** One session file as it was when its row was made; `link` is that of its last good line. */
const Row = z.object({
  file: z.string(),
  size: z.number(),
  changed: z.string(),
  link: z.string(),
  job: Job,
});
type Row = z.output<typeof Row>;

/** How far the reading has come. */
export type Progress = { readonly done: number; readonly of: number };

/** All jobs of a folder, and how many of them had to be read; what stood against keeping the index. */
export type Jobs = {
  readonly jobs: readonly Job[];
  readonly read: number;
  /** Sessions that were not read, since there were more than was asked for; then nothing was. */
  readonly unread: number;
  readonly trouble?: Problem;
};

/**
 * The jobs of a folder, oldest name first. Rows of the index serve for files that are as they were
 * when it was written, by size and times; any other is read, one a step, so that whoever draws a
 * screen can do so between. The index is then written whole, or not at all.
 */
export function* jobsIn(
  files: Files,
  folder: string,
  { afresh, most = Infinity }: Omit<Asked, 'tell'>,
): Generator<Progress, Jobs> {
  const listed = listSessions(files, folder).toReversed();
  const known: ReadonlyMap<string, Row> = afresh === true ? new Map() : readIndex(files, folder);
  const aged = listed.map((one) => ({ one, row: freshRow(files, one, known) }));
  const of = aged.filter(({ row }) => row === undefined).length;
  if (of > most) return { jobs: [], read: 0, unread: of };
  const shelf: Shelf = new Map();
  const rows: Row[] = [];
  let done = 0;
  for (const { one, row } of aged) {
    if (row !== undefined) {
      rows.push(row);
      continue;
    }
    yield { done, of };
    rows.push(makeRow(files, one, shelf));
    done += 1;
  }
  const jobs = rows.map(({ job }) => job);
  const changed = of > 0 || rows.length !== known.size;
  const kept = changed && rows.length > 0 ? writeIndex(files, folder, rows) : undefined;
  return {
    jobs,
    read: of,
    unread: 0,
    ...(kept?.kind === 'bad' && { trouble: firstOf(kept.problems) }),
  };
}

type Asked = {
  readonly tell?: (progress: Progress) => void;
  /** Every session is read, whatever the index holds. */
  readonly afresh?: boolean;
  /** Nothing is read where more than so many would have to be. */
  readonly most?: number;
};

/** The same in one go, telling of each step. */
export function loadJobs(
  files: Files,
  folder: string,
  { tell = () => {}, ...asked }: Asked = {},
): Jobs {
  const reading = jobsIn(files, folder, asked);
  for (;;) {
    const step = reading.next();
    if (step.done === true) return step.value;
    tell(step.value);
  }
}

function freshRow(
  files: Files,
  { path, name }: Listed,
  known: ReadonlyMap<string, Row>,
): Row | undefined {
  const row = known.get(`${name}${ending}`);
  const age = row && ageAt(files, path);
  return age !== undefined && row?.size === age.size && row.changed === age.changed
    ? row
    : undefined;
}

function ageAt(files: Files, path: string): Age | undefined {
  const age = attempt(path, () => files.ageOf(path));
  return age.kind === 'good' ? age.value : undefined;
}

/** No file is as old as that: its row is made anew the next time. */
const noAge: Age = { size: -1, changed: '' };

/** A file's age is taken before it is read: what is written meanwhile makes the row stale. */
function makeRow(files: Files, { path, name }: Listed, shelf: Shelf): Row {
  const age = ageAt(files, path) ?? noAge;
  const file = `${name}${ending}`;
  const loaded = loadSession(files, path, shelf);
  if (loaded.kind === 'good')
    return { file, ...age, link: loaded.value.link, job: jobOf(name, loaded.value) };
  const problem = firstOf(loaded.problems);
  // What the disk refuses now it may give later.
  const kept = isRefusal(problem) ? noAge : age;
  return { file, ...kept, link: '', job: jobApart(name, apartBy(problem)) };
}

const isRefusal = ({ code }: Problem): boolean => /^E[A-Z]+$/.test(code);

export function apartBy({ code }: Problem): Apart {
  if (code === 'newer-session') return 'made by a newer version';
  return code === 'altered-header' ? 'altered' : 'unreadable';
}

/** The rows by the name of their file; none where there is no index that was written whole by these rules. */
function readIndex(files: Files, folder: string): ReadonlyMap<string, Row> {
  const path = join(folder, indexFile);
  const rows = new Map<string, Row>();
  const read = attempt(path, () =>
    files.exists(path) ? new TextDecoder().decode(files.read(path)) : '',
  );
  if (read.kind === 'bad') return rows;
  const end = read.value.indexOf('\n');
  const behind = read.value.slice(end + 1);
  const head = Head.safeParse(jsonOf(read.value.slice(0, Math.max(end, 0))));
  if (!head.success || head.data.rows !== sha256(behind)) return rows;
  for (const line of behind.split('\n')) {
    const row = Row.safeParse(jsonOf(line));
    if (row.success) rows.set(row.data.file, row.data);
  }
  return rows;
}

function jsonOf(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    // Not of ours: what it stood for is read anew.
    return undefined;
  }
}

function writeIndex(files: Files, folder: string, rows: readonly Row[]): Parsed<void> {
  const path = join(folder, indexFile);
  const behind = rows.map((row) => `${safeJson(row)}\n`).join('');
  const head = safeJson({ index: 'jobs', rules, rows: sha256(behind) });
  return attempt(path, () => writeWhole(files, path, `${head}\n${behind}`));
}
