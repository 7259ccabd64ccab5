import { dirname } from 'node:path';
import type { Files } from './files.ts';

/** Writes a file whole or not at all: under another name first, synced, then renamed. */
export function writeWhole(files: Files, path: string, text: string): void {
  const fresh = `${path}.fresh`;
  if (files.exists(fresh)) files.remove(fresh);
  const handle = files.create(fresh);
  try {
    writeAll(files, handle, text);
    files.syncNow(handle);
  } finally {
    files.close(handle);
  }
  files.rename(fresh, path);
  files.syncFolder(dirname(path));
}

/** Writes all of a text or of bytes at the end of an open file; what a refused write left is cut off again. */
export function writeAll(files: Files, handle: number, content: string | Uint8Array): void {
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
