import { basename, join } from 'node:path';
import { bad, good, type Parsed } from '../core/problem.ts';
import type { SessionLine } from '../core/session/name.ts';
import type { Files } from './files.ts';

/** What the name of every session file ends with. */
export const ending = '.jsonl';

/** The name of a session: that of its file, without its ending. */
export const sessionName = (path: string): string => basename(path, ending);

export type Listed = Omit<SessionLine, 'closed'>;

/** The session files of a folder, newest name first. */
export function listSessions(files: Files, folder: string): readonly Listed[] {
  return files
    .list(folder)
    .filter((name) => name.endsWith(ending))
    .map((name) => ({ path: join(folder, name), name: sessionName(name) }))
    .toReversed();
}

/** Sessions looked into for a list: the first frame must not wait for more. */
const looked = 6;

/** The same for Home's list: whether one is closed stands in its last lines. */
export const sessionLines = (files: Files, folder: string): readonly SessionLine[] =>
  listSessions(files, folder).map((one, index) => ({
    ...one,
    closed: index >= looked || isClosed(files, one.path),
  }));

/** By its last word of it: closed, and not opened again or its closing taken back since. */
function isClosedText(text: string): boolean {
  const closed = text.lastIndexOf('"kind":"closed"');
  if (closed < 0 || text.includes('"kind":"reopened"', closed)) return false;
  const n = /"n":(\d+)/.exec(text.slice(text.lastIndexOf('\n', closed) + 1))?.[1];
  return n === undefined || !text.includes(`"kind":"corrected","of":${n}`, closed);
}

function isClosed(files: Files, path: string): boolean {
  try {
    return isClosedText(new TextDecoder().decode(files.read(path)));
  } catch {
    // A file that cannot be read is nothing to pick up.
    return true;
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
