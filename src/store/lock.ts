import { DatabaseSync } from 'node:sqlite';

/** One writer at a time: held, or by whom it is held. */
export type Lock =
  | { readonly kind: 'held'; readonly release: () => void }
  | { readonly kind: 'taken'; readonly by: string }
  /** Locking does not work in this folder (a network folder, say): read, do not write. */
  | { readonly kind: 'unsure'; readonly why: string };

/** What the holder leaves for the message: the lock itself needs none of it. */
export type Notes = {
  readonly read: (path: string) => string | undefined;
  readonly write: (path: string, text: string) => void;
};

const busy = 5;

/** Held here so that a holder nobody names any more is not collected, which would close it and free the lock. */
const held = new Set<DatabaseSync>();

/**
 * Takes the lock beside a session file. The kernel holds it for the process: a killed process frees
 * it at once, and there is no stale lock to judge. The lock file stays; deleting it would reopen
 * the race it closes.
 * @param holder who we are, for the message another process shows
 */
export function takeLock(session: string, holder: string, notes: Notes): Lock {
  const path = `${session}.lock`;
  const holderPath = `${session}.holder.lock`;
  let base: DatabaseSync;
  try {
    base = new DatabaseSync(path);
  } catch (error) {
    return { kind: 'unsure', why: error instanceof Error ? error.message : String(error) };
  }
  try {
    base.exec('PRAGMA busy_timeout = 0; BEGIN EXCLUSIVE');
  } catch (error) {
    base.close();
    const code = error instanceof Error && 'errcode' in error ? error.errcode : undefined;
    return code === busy
      ? { kind: 'taken', by: notes.read(holderPath) ?? 'another process' }
      : { kind: 'unsure', why: error instanceof Error ? error.message : String(error) };
  }
  try {
    notes.write(holderPath, holder);
  } catch {
    // The note only makes a message fuller; the lock is held without it.
  }
  held.add(base);
  return { kind: 'held', release: () => free(base) };
}

function free(base: DatabaseSync): void {
  held.delete(base);
  base.close();
}
