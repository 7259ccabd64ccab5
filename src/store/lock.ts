import { DatabaseSync } from 'node:sqlite';
import { StoreError, storeError, type Files } from './files.ts';

/** One writer at a time: held, or by whom it is held. */
export type Lock =
  | { readonly kind: 'held'; readonly assure: () => void; readonly release: () => void }
  | { readonly kind: 'taken'; readonly by: string }
  /** Locking does not work in this folder (a network folder, say): read, do not write. */
  | { readonly kind: 'unsure'; readonly why: string };

const busy = 5;

/** A lock that the system has given us, and which file it is on. */
type Grip = { readonly base: DatabaseSync; readonly id: string };

/** Held here so that a holder nobody names any more is not collected, which would close it and free the lock. */
const held = new Set<DatabaseSync>();

/**
 * Takes the lock beside a session file. The kernel holds it for the process: a killed process frees
 * it at once, and there is no stale lock to judge. The lock file stays. Who holds it stands in the
 * lock itself, for the message that another process shows.
 * @param holder who we are, for that message
 */
export function takeLock(files: Files, session: string, holder: string): Lock {
  const path = `${session}.lock`;
  const taken = take(files, path, holder);
  if (taken.kind !== 'taken by us') return taken;
  let { grip } = taken;
  const free = () => {
    held.delete(grip.base);
    grip.base.close();
  };
  /** Throws unless nobody else can have the lock: its file may have been removed under us. */
  const assure = () => {
    if (files.placeAt(path)?.id === grip.id) return;
    const again = take(files, path, holder);
    if (again.kind !== 'taken by us') throw lost(session, again);
    free();
    ({ grip } = again);
  };
  return { kind: 'held', assure, release: free };
}

const lost = (path: string, lock: Exclude<Lock, { kind: 'held' }>): StoreError =>
  lock.kind === 'taken'
    ? new StoreError(
        'locked',
        `The lock of this session was removed, and it is open now in ${lock.by}.`,
        'Close it there, then try again.',
        { path },
      )
    : new StoreError('no-lock', `The lock of this session is gone (${lock.why}).`, 'Try again.', {
        path,
      });

type Taken = { readonly kind: 'taken by us'; readonly grip: Grip };

function take(files: Files, path: string, holder: string): Taken | Exclude<Lock, { kind: 'held' }> {
  let base: DatabaseSync;
  let id: string;
  try {
    id = ownFile(files, path);
    base = new DatabaseSync(path);
  } catch (error) {
    return { kind: 'unsure', why: wordsOf(error, path) };
  }
  try {
    base.exec('PRAGMA busy_timeout = 0; PRAGMA journal_mode = MEMORY; PRAGMA synchronous = OFF');
    note(base, holder);
    // Keeps out every other writer, and lets them read whose it is.
    base.exec('BEGIN IMMEDIATE');
  } catch (error) {
    const code = error instanceof Error && 'errcode' in error ? error.errcode : undefined;
    const by = code === busy ? noteIn(base) : undefined;
    base.close();
    return code === busy
      ? { kind: 'taken', by: by ?? 'another process' }
      : { kind: 'unsure', why: wordsOf(error, path) };
  }
  held.add(base);
  return { kind: 'taken by us', grip: { base, id } };
}

const wordsOf = (error: unknown, path: string): string => {
  const told = error instanceof StoreError || (error instanceof Error && 'errcode' in error);
  return (told ? error : storeError(error, path)).message;
};

/**
 * Which file the lock is: made when there is none, and never what a link or a pipe leads to. It is
 * not opened here: closing it again would let go of a lock that this process has on it already.
 */
function ownFile(files: Files, path: string): string {
  if (files.placeAt(path) === undefined) files.close(files.create(path));
  // SQLite opens these by itself, and would wait at a pipe for ever.
  for (const beside of [`${path}-journal`, `${path}-wal`, `${path}-shm`])
    if (files.placeAt(beside) !== undefined) regular(files, beside);
  return regular(files, path);
}

function regular(files: Files, path: string): string {
  const place = files.placeAt(path);
  if (place?.kind === 'file') return place.id;
  const mend = 'Remove it, or move it elsewhere.';
  throw new StoreError('ENOTFILE', 'What stands at its name is no regular file.', mend, { path });
}

/**
 * Leaves who we are, as a view: its text stands on the first page, which is written in one piece, so
 * that a process killed while it writes leaves no half of it. Without room the lock goes without.
 */
function note(base: DatabaseSync, holder: string): void {
  base.exec('BEGIN EXCLUSIVE');
  try {
    const text = holder.slice(0, 200).replaceAll("'", "''");
    base.exec(`DROP VIEW IF EXISTS holder; CREATE VIEW holder AS SELECT '${text}' AS who; COMMIT`);
  } catch {
    if (base.isTransaction) base.exec('ROLLBACK');
  }
}

function noteIn(base: DatabaseSync): string | undefined {
  try {
    const who: unknown = base.prepare('SELECT who FROM holder').get()?.['who'];
    return typeof who === 'string' ? who : undefined;
  } catch {
    // The note only makes a message fuller; without it the message names nobody.
    return undefined;
  }
}
