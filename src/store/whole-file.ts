import { dirname } from 'node:path';
import type { Files, Handle } from './files.ts';

type Content = string | Uint8Array;

/** Writes a file whole or not at all: under another name first, synced, then renamed. */
export function writeWhole(files: Files, path: string, content: Content): void {
  const fresh = `${path}.fresh`;
  const handle = createAnew(files, fresh, [content]);
  try {
    files.rename(fresh, path);
  } catch (error) {
    discard(files, fresh, handle);
    throw error;
  }
  files.close(handle);
  files.syncFolder(dirname(path));
}

/** A new file in place of what a crash may have left of one, for appending. */
export function createAnew(files: Files, path: string, contents: readonly Content[]): Handle {
  if (files.placeAt(path) !== undefined) files.remove(path);
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
    discard(files, path, handle);
    throw error;
  }
}

/** Takes back a file that could not be written whole; what refused it counts, not what this meets. */
export function discard(files: Files, path: string, handle: Handle): void {
  for (const job of [() => files.close(handle), () => files.remove(path)])
    try {
      job();
    } catch {
      // Left under a name that nobody reads.
    }
}

/**
 * Keeps what stands at a name under another one, `NAME.aside`, before the name is given away: what
 * somebody else put there is not ours to destroy.
 */
export function keepAside(files: Files, path: string): void {
  for (let count = 1; ; count += 1) {
    const aside = `${path}.aside${count === 1 ? '' : `-${count}`}`;
    if (files.placeAt(aside) !== undefined) continue;
    try {
      files.link(path, aside);
    } catch {
      // No second names on this disk, or it is a folder: the name is free for a moment.
      files.rename(path, aside);
    }
    return;
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
