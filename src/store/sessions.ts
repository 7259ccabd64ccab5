import { join } from 'node:path';
import { bad, type Parsed, type Problem } from '../core/problem.ts';
import { forgeLine } from '../core/session/chain.ts';
import type { Header } from '../core/session/header/header.ts';
import { ending, sessionName } from './find.ts';
import { attempt, storeError, type Files, type Handle } from './files.ts';
import { Journal, type Listener } from './journal.ts';
import { takeLock, type Lock, type Notes } from './lock.ts';
import { readSession, sha256, type Recovered } from './recover.ts';
import { createWhole } from './whole-file.ts';

const maxBytes = 256 * 1024 * 1024;

export type Disk = {
  readonly files: Files;
  readonly notes: Notes;
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

/** Creates the file of a new session, header and folder on the disk before this returns. */
export function createSession(disk: Disk, folder: string, header: Header): string {
  const { files } = disk;
  try {
    files.makeFolder(folder);
  } catch (error) {
    throw storeError(error, folder);
  }
  const path = freeName(files, folder, header.id);
  const { line } = forgeLine({ ...header, id: sessionName(path) }, '', sha256);
  try {
    files.close(createWhole(files, path, [line]));
    files.syncFolder(folder);
  } catch (error) {
    throw storeError(error, path);
  }
  return path;
}

function freeName(files: Files, folder: string, id: string): string {
  for (let count = 1; ; count += 1) {
    const path = join(folder, `${id}${count === 1 ? '' : `-${count}`}${ending}`);
    if (!files.exists(path)) return path;
  }
}

/** Reads a session without opening it for writing. */
export function loadSession(files: Files, path: string): Parsed<Recovered> {
  const bytes = attempt(path, () => files.read(path));
  if (bytes.kind === 'bad') return bytes;
  if (bytes.value.length > maxBytes)
    return bad({
      code: 'file-too-large',
      file: path,
      message: 'The file is larger than 256 MiB.',
      mend: 'Name a session file.',
    });
  return readSession(bytes.value, path);
}

/** Opens a session for writing: the lock first, then an open end is closed, then it is read. */
export function openSession(disk: Disk, path: string, listener: Listener): Parsed<HeldSession> {
  const { files } = disk;
  const lock = takeLock(path, disk.holder, disk.notes);
  if (lock.kind !== 'held') return bad(lockProblem(path, lock));
  const loaded = loadSession(files, path);
  if (loaded.kind === 'bad') {
    lock.release();
    return loaded;
  }
  const opened = attempt(path, () => openBehind(disk, lock, loaded.value, { path, listener }));
  if (opened.kind === 'bad') lock.release();
  return opened;
}

type Wanted = { readonly path: string; readonly listener: Listener };
type Held = Extract<Lock, { kind: 'held' }>;

function openBehind(
  { files }: Disk,
  lock: Held,
  before: Recovered,
  { path, listener }: Wanted,
): HeldSession {
  const handle = files.openAppend(path);
  try {
    const recovered = before.openEnd ? endLine(files, path, handle, before) : before;
    const opened = { path, handle, bytes: recovered.bytes, link: recovered.link };
    const journal = new Journal(files, opened, listener);
    const release = () => {
      journal.close();
      lock.release();
    };
    return { path, recovered, journal, torn: tornBytes(before, recovered), release };
  } catch (error) {
    files.close(handle);
    throw error;
  }
}

/** Gives the last line its newline and reads anew: the line may be whole. */
function endLine(files: Files, path: string, handle: Handle, before: Recovered): Recovered {
  files.write(handle, new TextEncoder().encode('\n'));
  const again = loadSession(files, path);
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
