import { good, type Parsed } from '../core/problem.ts';
import { recordWarning, stateOf, type Damage } from '../core/session/record/damage.ts';
import { findSession } from '../store/find.ts';
import type { Recovered } from '../store/recover.ts';
import { loadSession } from '../store/sessions.ts';
import type { Ended, Io } from './io.ts';
import { absolute, readOptions, sessionsFolder, wrongUse, type Given } from './options.ts';
import type { Use as WholeUse } from './uses.ts';

/** How a command about one session is called. */
type Use = Pick<WholeUse, 'use' | 'options'>;

/** What such a command was given, and the path of its session. */
type Named = { readonly given: Given; readonly path: string };

/** A session that was read. */
export type Loaded = { readonly path: string; readonly recovered: Recovered };

/** The way into a command about one session, which is read but never opened for writing. */
export async function withSession(
  io: Io,
  args: readonly string[],
  use: Use,
  job: (session: Loaded & { readonly given: Given }) => Ended,
): Promise<Ended> {
  const named = namedIn(io, args, use);
  if (named.kind === 'bad') return named;
  const { given, path } = named.value;
  const recovered = loadSession(io.disk.files, path);
  return recovered.kind === 'bad' ? recovered : job({ given, path, recovered: recovered.value });
}

/** What stands first in JSON made from a record: its state, and what is to be known of it. */
export function recordJson(damage: readonly Damage[]) {
  const warning = recordWarning(damage);
  return { state: stateOf(damage), ...(warning !== undefined && { warning }) };
}

/** The options of a command and the one session it is about, not read yet. */
export function namedIn(io: Io, args: readonly string[], { use, options }: Use): Parsed<Named> {
  const given = readOptions(args, options);
  if (given.kind === 'bad') return given;
  const path = namedSession(io, given.value, `droplight ${use}`);
  return path.kind === 'bad' ? path : good({ given: given.value, path: path.value });
}

/** The one session that a command is about. */
export function namedSession(io: Io, given: Given, use: string): Parsed<string> {
  const [named, ...more] = given.words;
  if (named === undefined || more.length > 0)
    return wrongUse('This command wants one session.', use);
  return sessionNamed(io, given, named);
}

/** The files of all sessions that a command names; it wants one at least. */
export function namedSessions(io: Io, given: Given, use: string): Parsed<readonly string[]> {
  if (given.words.length === 0) return wrongUse('This command wants one session or more.', use);
  const paths: string[] = [];
  for (const word of given.words) {
    const path = sessionNamed(io, given, word);
    if (path.kind === 'bad') return path;
    paths.push(path.value);
  }
  return good(paths);
}

/** The file of a session that somebody named, as an absolute path. */
export const sessionNamed = (io: Io, given: Given, named: string): Parsed<string> =>
  findSession(io.disk.files, sessionsFolder(io, given), { named, path: absolute(io, named) });
