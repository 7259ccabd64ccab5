import { dirname } from 'node:path';
import type { Files, Handle } from './files.ts';

type Content = string | Uint8Array;

/** Writes a file whole or not at all: under another name first, synced, then renamed. */
export function writeWhole(files: Files, path: string, text: string): void {
  const fresh = `${path}.fresh`;
  files.close(createAnew(files, fresh, [text]));
  files.rename(fresh, path);
  files.syncFolder(dirname(path));
}

/** A new file in place of what a crash may have left of one, for appending. */
export function createAnew(files: Files, path: string, contents: readonly Content[]): Handle {
  if (files.exists(path)) files.remove(path);
  return createWhole(files, path, contents);
}

/** A file that was not there, open for appending, with these contents on the disk; or no file. */
export function createWhole(files: Files, path: string, contents: readonly Content[]): Handle {
  const handle = files.create(path);
  try {
    for (const content of contents) writeAll(files, handle, content);
    files.syncNow(handle);
    return handle;
  } catch (error) {
    files.close(handle);
    files.remove(path);
    throw error;
  }
}

/** Writes all of a text or of bytes at the end of an open file; what a refused write left is cut off again. */
export function writeAll(files: Files, handle: number, content: Content): void {
  const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const start = files.size(handle);
  let done = 0;
  try {
    while (done < bytes.length) done += files.write(handle, bytes.subarray(done));
  } catch (error) {
    if (done > 0) files.truncate(handle, start);
    throw error;
  }
}
