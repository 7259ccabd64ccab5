import type { Files } from './files.ts';
import { listSessions } from './find.ts';

/** One line of a list of sessions. */
export type SessionLine = {
  readonly path: string;
  readonly name: string;
  readonly closed: boolean;
};

/** The sessions of a folder for Home's list; whether one is closed stands in its last lines. */
export function sessionLines(files: Files, folder: string): readonly SessionLine[] {
  return listSessions(files, folder).map(({ path, name }, index) => ({
    path,
    name,
    // Older ones are not opened for the list: the first frame must not wait for them.
    closed: index >= looked || isClosed(files, path),
  }));
}

const looked = 6;

function isClosed(files: Files, path: string): boolean {
  try {
    return new TextDecoder().decode(files.read(path)).includes('"kind":"closed"');
  } catch {
    // A file that cannot be read is nothing to pick up.
    return true;
  }
}
