import { forgeLine } from '../core/session/record/chain.ts';
import type { Event } from '../core/session/event.ts';
import { unreadable } from '../core/session/read-event.ts';
import { StoreError, storeError, type Files } from './files.ts';
import { sha256 } from './recover.ts';
import { RecordFile, type OpenedFile } from './record-file.ts';

/** What a journal tells of itself; called outside of any key handler. */
export type Listener = {
  /** Everything up to event `n` is on the disk. */
  readonly kept: (n: number) => void;
  readonly trouble: (error: StoreError) => void;
  /** Somebody changed the file while it was open; the whole record stands in it again. */
  readonly mended?: (what: StoreError) => void;
};

/** A session file open for writing, and where its chain stands. */
export type Opened = OpenedFile & { readonly link: string };

/** Lines forged and not yet on the disk. */
type Line = { readonly n: number; readonly line: string };

/**
 * Appends events to one open session file. Each line is written at once, which outlives this
 * process; one sync runs behind, and lines written meanwhile wait for the next one. Nothing counts
 * as kept before the file at its path is still ours, with the bytes we know of.
 */
export class Journal {
  readonly #file: RecordFile;
  readonly #path: string;
  readonly #listener: Listener;
  #link: string;
  /** Not yet taken by the system. */
  #held: Line[] = [];
  /** Taken by the system, and not yet known to be on the disk. */
  #taken: Line[] = [];
  #written = 0;
  #durable = 0;
  #syncing: Promise<void> | undefined;
  #closed = false;

  constructor(files: Files, opened: Opened, listener: Listener) {
    this.#file = new RecordFile(files, opened);
    this.#path = opened.path;
    this.#link = opened.link;
    this.#listener = listener;
  }

  /** Writes at once and syncs behind it; a refusal is told to the listener, the entry is held. */
  append(event: Event): void {
    this.#hold(event);
    this.retry();
  }

  /**
   * Puts events on the disk, all or none.
   * @throws StoreError when the disk refuses; then none of them stands in the file
   */
  commit(events: readonly Event[]): void {
    if (events.length === 0) return;
    if (this.unsaved().length > 0) this.settle();
    const link = this.#link;
    try {
      for (const event of events) this.#hold(event);
      this.settle();
    } catch (error) {
      this.#takeBack(link);
      throw error;
    }
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
      if (this.#syncing !== undefined) this.#file.writeAnew();
      this.#writeHeld();
      this.#file.syncNow();
      this.#assure();
    } catch (error) {
      throw storeError(error, this.#path);
    }
    this.#keep(this.#written);
  }

  /** The link of the last line: the record's fingerprint. */
  link(): string {
    return this.#link;
  }

  /** The lines that are not known to be on the disk: all that would be lost with this process. */
  unsaved(): readonly string[] {
    return [...this.#taken, ...this.#held].map(({ line }) => line);
  }

  /** Writes the whole record, what is not kept included, into a new file elsewhere. */
  saveElsewhere(path: string): void {
    this.#file.copyTo(
      path,
      this.#held.map(({ line }) => line),
    );
  }

  /** Lets go of the file; what was kept stands in it once more if somebody took it away. */
  close(): void {
    this.#closed = true;
    try {
      this.#assure();
    } catch {
      // The disk goes on refusing: whoever leaves has been told, and what is not kept was handed over.
    }
    try {
      this.#file.close();
    } catch {
      // What was kept was synced before; a handle that does not close takes nothing of it away.
    }
  }

  #hold(event: Event): void {
    const problem = unreadable(event);
    if (problem !== undefined)
      throw new StoreError(problem.code, problem.message, problem.mend, { path: this.#path });
    const { line, link } = forgeLine(event, this.#link, sha256);
    this.#link = link;
    this.#held.push({ n: event.n, line });
  }

  /** Notes what the disk has; never less than before. */
  #keep(upTo: number): void {
    if (upTo <= this.#durable) return;
    this.#durable = upTo;
    this.#taken = this.#taken.filter(({ n }) => n > upTo);
    this.#listener.kept(upTo);
  }

  #writeHeld(): void {
    if (this.#held.length > 0 || this.#file.doubtful) this.#assure();
    for (let next = this.#held[0]; next !== undefined; next = this.#held[0]) {
      this.#file.append(next.line);
      this.#written = next.n;
      this.#taken.push(next);
      this.#held.shift();
    }
  }

  /** The file is ours and whole, or is made so; throws where it cannot be. */
  #assure(): void {
    const mended = this.#file.assure();
    if (mended !== undefined) this.#listener.mended?.(mended);
  }

  /** Forgets what was refused, in the file too; what stood there before stands there again. */
  #takeBack(link: string): void {
    const written = this.#taken.reduce((sum, { line }) => sum + Buffer.byteLength(line), 0);
    this.#held = [];
    this.#taken = [];
    this.#written = this.#durable;
    this.#link = link;
    this.#file.takeBack(written);
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
    if (!(await this.#file.sync(() => this.#closed))) return;
    this.#assure();
    this.#keep(upTo);
  }
}
