import { dirname, join } from 'node:path';
import { bad, firstOf, good, type Parsed, type Problem } from '../core/problem.ts';
import { forgeLine } from '../core/session/record/chain.ts';
import { unreadableHeader, type Header } from '../core/session/header/header.ts';
import { ending, sessionName } from './find.ts';
import { attempt, StoreError, storeError, type Files, type Handle } from './files.ts';
import { Journal, type Listener } from './journal.ts';
import { takeLock, type Lock } from './lock.ts';
import { readSession, sha256, type Recovered } from './recover.ts';
import { shelved, type Shelf } from './shelf.ts';
import { createWhole, writeAll } from './whole-file.ts';

const maxBytes = 256 * 1024 * 1024;

export type Disk = {
  readonly files: Files;
  /** Who we are, for the message that another process shows: process id, host, since when. */
  readonly holder: string;
};

/** A session open for writing. */
export type HeldSession = {
  readonly path: string;
  readonly recovered: Recovered;
  readonly journal: Journal;
  /** Bytes at the end that a power loss had torn. */
  readonly torn: number;
  readonly release: () => void;
};

/**
 * Creates the file of a new session, header and folder on the disk before this returns.
 * @param shelf given where the session is opened next: its header is then read once for both
 */
export function createSession(disk: Disk, folder: string, header: Header, shelf?: Shelf): string {
  const { files } = disk;
  try {
    files.makeFolder(folder);
  } catch (error) {
    throw storeError(error, folder);
  }
  for (let count = 1; ; count += 1) {
    const path = join(folder, `${header.id}${count === 1 ? '' : `-${count}`}${ending}`);
    const made = attempt(path, () => createAt(files, path, header, shelf));
    if (made.kind === 'good') return path;
    const { code, message, mend } = firstOf(made.problems);
    // Another process may take a name between the look and the making.
    if (code !== 'EEXIST') throw new StoreError(code, message, mend, { path });
  }
}

function createAt(files: Files, path: string, header: Header, shelf: Shelf = new Map()): void {
  const named = { ...header, id: sessionName(path) };
  const isRead = shelved(JSON.parse(JSON.stringify(named)), shelf) !== undefined;
  const problem = isRead ? undefined : unreadableHeader(named);
  if (problem !== undefined)
    throw new StoreError(problem.code, problem.message, problem.mend, { path: problem.path ?? '' });
  const { line } = forgeLine(named, '', sha256);
  files.close(createWhole(files, path, [line]));
  files.syncFolder(dirname(path));
}

/** Reads a session without opening it for writing; with a shelf where many are read in one go. */
export function loadSession(files: Files, path: string, shelf?: Shelf): Parsed<Recovered> {
  const bytes = attempt(path, () => (files.sizeOf(path) > maxBytes ? undefined : files.read(path)));
  if (bytes.kind === 'bad') return bytes;
  return bytes.value === undefined ? bad(tooLarge(path)) : readSession(bytes.value, path, shelf);
}

const tooLarge = (file: string): Problem => ({
  code: 'file-too-large',
  file,
  message: 'The file is larger than 256 MiB.',
  mend: 'Name a session file.',
});

/**
 * Opens a session for writing: the lock first, then an open end is closed, then it is read. Nothing
 * is put beside a file that is no session. Its tree is understood once for both readings.
 */
export function openSession(
  disk: Disk,
  path: string,
  listener: Listener,
  shelf: Shelf = new Map(),
): Parsed<HeldSession> {
  const { files } = disk;
  const before = loadSession(files, path, shelf);
  if (before.kind === 'bad') return before;
  const lock = takeLock(files, path, disk.holder);
  if (lock.kind !== 'held') return bad(lockProblem(path, lock));
  const opened = attempt(path, () => openBehind(disk, lock, { path, listener, shelf }));
  if (opened.kind === 'good' && opened.value.kind === 'good') return opened.value;
  lock.release();
  return opened.kind === 'good' ? opened.value : opened;
}

type Wanted = { readonly path: string; readonly listener: Listener; readonly shelf: Shelf };
type Held = Extract<Lock, { kind: 'held' }>;

function openBehind(disk: Disk, lock: Held, wanted: Wanted): Parsed<HeldSession> {
  const { files } = disk;
  const { path, listener, shelf } = wanted;
  const handle = files.openAppend(path);
  try {
    // Read through the handle: another file may have taken the name since.
    const read = readSession(files.readOpen(handle), path, shelf);
    if (read.kind === 'bad') {
      files.close(handle);
      return read;
    }
    const before = read.value;
    const recovered = before.openEnd ? endLine(files, handle, before, wanted) : before;
    const journal = new Journal(
      files,
      {
        path,
        handle,
        bytes: recovered.bytes,
        link: recovered.link,
        assureLock: lock.assure,
      },
      listener,
    );
    const release = () => {
      journal.close();
      lock.release();
    };
    return good({ path, recovered, journal, torn: tornBytes(before, recovered), release });
  } catch (error) {
    files.close(handle);
    throw error;
  }
}

/** Gives the last line its newline and reads anew: the line may be whole. */
function endLine(
  files: Files,
  handle: Handle,
  before: Recovered,
  { path, shelf }: Wanted,
): Recovered {
  writeAll(files, handle, '\n');
  const again = readSession(files.readOpen(handle), path, shelf);
  return again.kind === 'good' ? again.value : before;
}

/** Bytes of the torn last line, if it did not turn out whole once its newline was put back. */
function tornBytes(before: Recovered, after: Recovered): number {
  const last = after.damage.at(-1);
  return before.openEnd && last?.kind === 'torn' ? last.bytes : 0;
}

function lockProblem(path: string, lock: Exclude<Lock, { kind: 'held' }>): Problem {
  return lock.kind === 'taken'
    ? {
        code: 'locked',
        file: path,
        message: `This session is open already, in ${lock.by}.`,
        mend: 'Close it there, or only read it: "droplight story" and "droplight write" work now.',
      }
    : {
        code: 'no-lock',
        file: path,
        message: `This session cannot be locked here (${lock.why}).`,
        mend: 'Check that the file is there and its folder can be written to, or copy it to this disk.',
      };
}
