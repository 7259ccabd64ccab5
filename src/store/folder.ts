import { isAbsolute, join, resolve } from 'node:path';
import { bad, good, type Parsed } from '../core/problem.ts';
import { refusal, StoreError, storeError, type Files } from './files.ts';

/** Where a path that was typed begins: at the home folder for `~`, else at the current one. */
export type PathRoots = { readonly current: string; readonly home: string };

/** A path as a person types it, whole from the root: a setting must mean one place on every start. */
export function wholePath(typed: string, { current, home }: PathRoots): string {
  if (typed === '~' || typed.startsWith('~/') || typed.startsWith('~\\')) {
    return join(home, typed.slice(1));
  }
  return isAbsolute(typed) ? typed : resolve(join(current, typed));
}

/** Makes a folder where there is none; tells in one line, with the path, what stands against it. */
export function folderFor(files: Files, path: string): Parsed<string> {
  try {
    files.makeFolder(path);
    files.list(path);
    return good(path);
  } catch (error) {
    const { message, ...rest } = refusal(storeError(error, path));
    return bad({ ...rest, message: `${path}: ${message}` });
  }
}

/** A folder of ours: a link in its place would lead what is written somewhere else. */
export function makeOwnFolder(files: Files, path: string): void {
  files.makeFolder(path);
  if (files.placeAt(path)?.kind === 'folder') return;
  const mend = 'Remove it, or use another folder.';
  throw new StoreError('ELOOP', 'This is a link, and links are not followed here.', mend, { path });
}
