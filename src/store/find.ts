import { basename, join } from 'node:path';
import { bad, good, type Parsed } from '../core/problem.ts';
import { closings } from '../core/session/record/closing.ts';
import type { SessionLine, SessionState } from '../core/session/name.ts';
import type { Files } from './files.ts';

/** What the name of every session file ends with. */
export const ending = '.jsonl';

/** The name of a session: that of its file, without its ending. */
export const sessionName = (path: string): string => basename(path, ending);

export type Listed = Pick<SessionLine, 'path' | 'name'>;

/** Letters of the first line that hold who and whose it is; its trees come behind them. */
const headerRead = 8000;

/** The session files of a folder, newest name first. */
export function listSessions(files: Files, folder: string): readonly Listed[] {
  return files
    .list(folder)
    .filter((name) => name.endsWith(ending))
    .map((name) => ({ path: join(folder, name), name: sessionName(name) }))
    .toReversed();
}

/** Sessions looked into for Home: the first frame must not wait for more. */
export const lookedFirst = 6;

/**
 * The same for the list: how each stands, and whose it is.
 * @param most so many are looked into, the newest first; of the others nothing is known
 */
export const sessionLines = (
  files: Files,
  folder: string,
  most = Infinity,
): readonly SessionLine[] =>
  listSessions(files, folder).map((one, index) =>
    index < most ? { ...one, ...lookedInto(files, one.path) } : { ...one, ...notKnown },
  );

const notKnown = { state: 'unknown', of: undefined } as const;

/** By its last word of it: closed, and not opened again or its closing taken back since. */
function stateIn(text: string): SessionState {
  const at = text.lastIndexOf('"kind":"closed"');
  if (at < 0 || text.includes('"kind":"reopened"', at)) return 'open';
  const line = text.slice(text.lastIndexOf('\n', at) + 1).split('\n')[0] ?? '';
  const n = /"n":(\d+)/.exec(line)?.[1];
  if (n !== undefined && text.includes(`"kind":"corrected","of":${n}`, at)) return 'open';
  return closings.find((as) => line.includes(`"as":"${as}"`)) ?? 'unknown';
}

/** A text of the first line by its key; quotes inside a text are written with a backslash. */
function textIn(line: string, key: string): string | undefined {
  const found = new RegExp(`${key}("(?:[^"\\\\]|\\\\.)*")`).exec(line)?.[1];
  return found === undefined ? undefined : (JSON.parse(found) as string);
}

function lookedInto(files: Files, path: string): Pick<SessionLine, 'state' | 'of' | 'practice'> {
  try {
    const text = new TextDecoder().decode(files.read(path));
    const first = text.slice(0, headerRead);
    const [vehicle, tree] = [textIn(first, '"vehicle":\\{"name":'), textIn(first, '"tree":')];
    const of = vehicle === undefined || tree === undefined ? undefined : { vehicle, tree };
    // Quotes inside a text are written with a backslash: only the header itself begins so.
    const practice = first.includes('"practice":{"commitment":');
    return { state: stateIn(text), of, ...(practice && { practice }) };
  } catch {
    // A file that cannot be read is nothing to pick up.
    return notKnown;
  }
}

/**
 * The file that a person means: a path, the name of a session in the folder, or its beginning.
 * @param path what they typed, taken as a path from where they are
 */
export function findSession(
  files: Files,
  folder: string,
  { named, path }: { readonly named: string; readonly path: string },
): Parsed<string> {
  const tries = [path, join(folder, named), join(folder, `${named}${ending}`)];
  const found = named === '' ? undefined : tries.find((one) => files.exists(one));
  if (found !== undefined) return good(found);
  const fitting = listSessions(files, folder).filter(({ name }) => name.startsWith(named));
  const [only] = fitting;
  if (only !== undefined && fitting.length === 1) return good(only.path);
  return bad({
    code: fitting.length > 1 ? 'several-sessions' : 'no-such-session',
    value: named,
    message:
      fitting.length > 1
        ? `${fitting.length} sessions begin with "${named}".`
        : `There is no session "${named}" in ${folder}.`,
    mend: 'See "droplight sessions".',
  });
}
