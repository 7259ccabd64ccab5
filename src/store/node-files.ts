import {
  closeSync,
  constants,
  existsSync,
  fdatasync,
  fdatasyncSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  realpathSync,
  renameSync,
  statSync,
  unlinkSync,
  writeSync,
  type BigIntStats,
} from 'node:fs';
import { platform } from 'node:os';
import { dirname } from 'node:path';
import { promisify } from 'node:util';
import { StoreError, type Age, type Files, type Place } from './files.ts';

const { O_APPEND, O_CREAT, O_EXCL, O_RDONLY, O_RDWR } = constants;
/** Not there on every system; where it is, a link in place of the file is refused. */
const noFollow = constants.O_NOFOLLOW ?? 0;
const noBlock = constants.O_NONBLOCK ?? 0;
const sync = promisify(fdatasync);

/** Opens without waiting: a pipe in place of a file would keep us for ever. */
function openRegular(path: string, flags: number): number {
  const handle = openSync(path, flags);
  if (fstatSync(handle).isFile()) return handle;
  closeSync(handle);
  throw new StoreError('ENOTFILE', 'This is no regular file.', 'Name a file of ours.', { path });
}

function readThrough(path: string, read: (handle: number) => Uint8Array): Uint8Array {
  const handle = openRegular(path, O_RDONLY | noBlock);
  try {
    return read(handle);
  } finally {
    closeSync(handle);
  }
}

/** As many bytes as the file had when it was asked: one that grows for ever is read to there. */
function wholeOf(handle: number): Uint8Array {
  const bytes = new Uint8Array(fstatSync(handle).size);
  let done = 0;
  while (done < bytes.length) {
    const read = readSync(handle, bytes, done, bytes.length - done, done);
    if (read === 0) break;
    done += read;
  }
  return bytes.subarray(0, done);
}

const placeFrom = (found: BigIntStats): Place => ({
  id: `${found.dev}:${found.ino}`,
  size: Number(found.size),
  kind: found.isFile() ? 'file' : found.isDirectory() ? 'folder' : 'other',
});

/**
 * Makes a folder and those above it, one by one. The system's own way of doing so in one call goes
 * round for ever under a parent that answers "no such file" for a new name (seen on /proc).
 */
function makeFolder(folder: string): void {
  if (!existsSync(folder)) {
    makeFolder(dirname(folder));
    if (makeOne(folder)) return;
  }
  if (statSync(folder).isDirectory()) return;
  const mend = 'Name a folder.';
  throw new StoreError('ENOTDIR', 'This is a file, not a folder.', mend, { path: folder });
}

/** @returns false where its name is taken: another process may have made it since it was looked for */
function makeOne(folder: string): boolean {
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  }
  try {
    syncFolder(dirname(folder));
  } catch (error) {
    // A folder that may be written to and not read cannot be synced; its names are there all the same.
    if (codeOf(error) !== 'EACCES') throw error;
  }
  return true;
}

const codeOf = (error: unknown): unknown =>
  error instanceof Error && 'code' in error ? error.code : undefined;

/** Makes new names in a folder durable. Windows has no such call: a new name is durable there with its file. */
function syncFolder(folder: string): void {
  if (platform() === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Both times: the second cannot be set back by who changes a file. */
function ageOf(path: string): Age | undefined {
  const found = lstatSync(path, { bigint: true, throwIfNoEntry: false });
  return found && { size: Number(found.size), changed: `${found.mtimeNs}.${found.ctimeNs}` };
}

/** The disk of this machine. */
export const nodeFiles: Files = {
  create: (path) => openSync(path, O_CREAT | O_EXCL | O_APPEND | O_RDWR | noFollow, 0o600),
  openAppend: (path) => openRegular(path, O_APPEND | O_RDWR | noFollow | noBlock),
  write: (handle, bytes) => writeSync(handle, bytes),
  size: (handle) => fstatSync(handle).size,
  ageOf,
  placeOf: (handle) => placeFrom(fstatSync(handle, { bigint: true })),
  placeAt: (path) => {
    const found = lstatSync(path, { bigint: true, throwIfNoEntry: false });
    return found && placeFrom(found);
  },
  realPath: (path) => realpathSync(path),
  truncate: (handle, length) => ftruncateSync(handle, length),
  sync,
  syncNow: (handle) => fdatasyncSync(handle),
  close: (handle) => closeSync(handle),
  sizeOf: (path) => {
    const found = statSync(path);
    if (found.isFile() || found.isDirectory()) return found.size;
    throw new StoreError('ENOTFILE', 'This is no regular file.', 'Name a file.', { path });
  },
  read: (path) => readThrough(path, wholeOf),
  readOpen: wholeOf,
  readStart: (path, length) =>
    readThrough(path, (handle) => {
      const bytes = new Uint8Array(Math.min(length, fstatSync(handle).size));
      return bytes.subarray(0, readSync(handle, bytes, 0, bytes.length, 0));
    }),
  list: (folder) => (existsSync(folder) ? readdirSync(folder).toSorted() : []),
  makeFolder,
  exists: existsSync,
  syncFolder,
  rename: (from, to) => renameSync(from, to),
  link: (from, to) => linkSync(from, to),
  remove: (path) => unlinkSync(path),
};
