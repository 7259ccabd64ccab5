import { dirname } from 'node:path';
import { forgeLine } from '../core/session/chain.ts';
import type { Event } from '../core/session/event.ts';
import { storeError, type Files, type Handle, type StoreError } from './files.ts';
import { sha256 } from './recover.ts';
import { createAnew, writeAll } from './whole-file.ts';

/** What a journal tells of itself; called outside of any key handler. */
export type Listener = {
  /** Everything up to event `n` is on the disk. */
  readonly kept: (n: number) => void;
  readonly trouble: (error: StoreError) => void;
};

export type Opened = {
  readonly path: string;
  readonly handle: Handle;
  /** Everything the file holds, for writing it anew when a sync has failed. */
  readonly bytes: Uint8Array;
  readonly link: string;
};

/**
 * Appends events to one open session file. Each line is written at once, which outlives this
 * process; one sync runs behind, and lines written meanwhile wait for the next one.
 */
export class Journal {
  readonly #files: Files;
  readonly #path: string;
  readonly #listener: Listener;
  readonly #found: Uint8Array;
  #handle: Handle;
  /** What was written behind what was found. */
  #added = '';
  #link: string;
  /** Lines forged and not yet taken by the system. */
  #held: { readonly n: number; readonly line: string }[] = [];
  #written = 0;
  #durable = 0;
  #syncing: Promise<void> | undefined;
  /** A sync has failed: what the system took since the last good one cannot be trusted. */
  #doubtful = false;
  #closed = false;

  constructor(files: Files, opened: Opened, listener: Listener) {
    this.#files = files;
    this.#path = opened.path;
    this.#handle = opened.handle;
    this.#found = opened.bytes;
    this.#link = opened.link;
    this.#listener = listener;
  }

  /** Writes at once and syncs behind it; a refusal is told to the listener, the entry is held. */
  append(event: Event): void {
    const { line, link } = forgeLine(event, this.#link, sha256);
    this.#link = link;
    this.#held.push({ n: event.n, line });
    this.retry();
  }

  /** Tries to write and sync what is held. */
  retry(): void {
    this.settled().catch((error: unknown) => this.#listener.trouble(storeError(error, this.#path)));
  }

  /** Resolves when everything is on the disk; rejects with the StoreError when the disk refuses. */
  async settled(): Promise<void> {
    try {
      this.#writeHeld();
      await this.#syncBehind();
    } catch (error) {
      throw storeError(error, this.#path);
    }
  }

  /** Blocks until everything is on the disk, or throws a StoreError. */
  settle(): void {
    try {
      // A sync that still runs may fail after ours has succeeded: what it covers is written anew.
      if (this.#syncing !== undefined) this.#rewrite();
      this.#writeHeld();
      this.#syncNow();
    } catch (error) {
      throw storeError(error, this.#path);
    }
    this.#keep(this.#written);
  }

  /** The link of the last line: the record's fingerprint. */
  link(): string {
    return this.#link;
  }

  close(): void {
    this.#closed = true;
    this.#files.close(this.#handle);
  }

  #syncNow(): void {
    try {
      this.#files.syncNow(this.#handle);
    } catch (error) {
      this.#doubtful = true;
      throw error;
    }
  }

  /** Notes what the disk has; never less than before. */
  #keep(upTo: number): void {
    if (upTo <= this.#durable) return;
    this.#durable = upTo;
    this.#listener.kept(upTo);
  }

  #writeHeld(): void {
    if (this.#doubtful) this.#rewrite();
    for (let next = this.#held[0]; next !== undefined; next = this.#held[0]) {
      this.#writeLine(next.line);
      this.#added += next.line;
      this.#written = next.n;
      this.#held.shift();
    }
  }

  /** A line whole or not at all; where not even the cut of its torn bytes is taken, the file is written anew. */
  #writeLine(line: string): void {
    const before = this.#files.size(this.#handle);
    this.#doubtful = true;
    try {
      writeAll(this.#files, this.#handle, line);
      this.#doubtful = false;
    } catch (error) {
      this.#doubtful = this.#files.size(this.#handle) !== before;
      throw error;
    }
  }

  #syncBehind(): Promise<void> {
    if (this.#syncing !== undefined) return this.#syncing;
    if (this.#written === this.#durable) return Promise.resolve();
    this.#syncing = this.#syncAll();
    return this.#syncing;
  }

  /** Syncs until nothing was written meanwhile, so that whoever waits waits for everything. */
  async #syncAll(): Promise<void> {
    // Never ends within the call that starts it: the caller must have noted that it runs.
    await Promise.resolve();
    try {
      while (this.#durable < this.#written && !this.#closed) await this.#syncOnce(this.#written);
    } finally {
      this.#syncing = undefined;
    }
  }

  async #syncOnce(upTo: number): Promise<void> {
    const handle = this.#handle;
    try {
      await this.#files.sync(handle);
    } catch (error) {
      // Closed meanwhile, or written anew: what this sync was for has been settled otherwise.
      if (this.#closed || handle !== this.#handle) return;
      this.#doubtful = true;
      throw error;
    }
    if (handle === this.#handle) this.#keep(upTo);
  }

  /**
   * After a failed sync a later success proves nothing (the system may have dropped the pages), so
   * the same bytes go into a new file, are synced there, and take the old one's name.
   */
  #rewrite(): void {
    const fresh = `${this.#path}.fresh`;
    const handle = createAnew(this.#files, fresh, [this.#found, this.#added]);
    // Once renamed, the old file has no name: nothing more may be written to it, whatever comes.
    this.#doubtful = true;
    try {
      this.#files.rename(fresh, this.#path);
      this.#files.syncFolder(dirname(this.#path));
    } catch (error) {
      this.#files.close(handle);
      throw error;
    }
    const old = this.#handle;
    this.#handle = handle;
    this.#doubtful = false;
    try {
      this.#files.close(old);
    } catch {
      // The old file has no name any more; that it does not close harms nothing.
    }
  }
}
