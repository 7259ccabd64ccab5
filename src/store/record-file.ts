import { dirname } from 'node:path';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { StoreError, type Files, type Handle } from './files.ts';
import { createAnew, createWhole, discard, keepAside, writeAll } from './whole-file.ts';

export type OpenedFile = {
  readonly path: string;
  readonly handle: Handle;
  /** Everything the file holds, for writing it anew when a sync has failed or the file is gone. */
  readonly bytes: Uint8Array;
  /** Throws unless no other process can write this session. */
  readonly assureLock: () => void;
};

/** Bytes written that are held as they are. */
const packedFrom = 128 * 1024;

/** A session file open for appending that is held to what we know of it, and written anew when it is not so. */
export class RecordFile {
  readonly #files: Files;
  readonly #path: string;
  readonly #assureLock: () => void;
  /** What was found; what was written stands behind it. */
  readonly #found: Uint8Array;
  /** Of what was written, the older, packed: a long day must not fill the memory. */
  readonly #packed: Uint8Array[] = [];
  #parts: string[] = [];
  /** Bytes of the parts that are not packed. */
  #loose = 0;
  #size: number;
  #handle: Handle;
  #id: string;
  /** A sync has failed: what the system took since the last good one cannot be trusted. */
  #doubtful = false;

  constructor(files: Files, { path, handle, bytes, assureLock }: OpenedFile) {
    this.#files = files;
    this.#path = path;
    this.#handle = handle;
    this.#assureLock = assureLock;
    this.#found = bytes;
    this.#size = bytes.length;
    this.#id = files.placeOf(handle).id;
  }

  /** What the system took may not be on the disk, whatever it says later. */
  get doubtful(): boolean {
    return this.#doubtful;
  }

  /** A line whole or not at all; where not even the cut of its torn bytes is taken, the file is written anew. */
  append(line: string): void {
    this.#doubtful = true;
    try {
      writeAll(this.#files, this.#handle, line);
      this.#doubtful = false;
    } catch (error) {
      this.#doubtful = this.#files.size(this.#handle) !== this.#size;
      throw error;
    }
    this.#parts.push(line);
    this.#size += Buffer.byteLength(line);
    this.#loose += Buffer.byteLength(line);
  }

  /** Takes so many bytes back from the end, of lines that were refused. */
  takeBack(bytes: number): void {
    for (let left = bytes; left > 0;) {
      const last = this.#parts.pop();
      if (last === undefined) throw new Error('more was taken back than was written');
      left -= Buffer.byteLength(last);
    }
    this.#size -= bytes;
    this.#loose -= bytes;
    try {
      const { size } = this.#files.placeOf(this.#handle);
      if (size > this.#size) this.#files.truncate(this.#handle, this.#size);
    } catch (error) {
      this.#doubtful = true;
      throw new StoreError(
        'perhaps-kept',
        'The disk refused this, and refused to take it back: it may stand in the record.',
        'Look with "droplight story" before you try again.',
        { path: this.#path, cause: error },
      );
    }
  }

  /** @returns whether the sync was of the file as it stands now; one of a file let go meanwhile counts for nothing. */
  async sync(closed: () => boolean): Promise<boolean> {
    const handle = this.#handle;
    try {
      await this.#files.sync(handle);
    } catch (error) {
      // Closed meanwhile, or written anew: what this sync was for has been settled otherwise.
      if (closed() || handle !== this.#handle) return false;
      this.#doubtful = true;
      throw error;
    }
    return handle === this.#handle && !closed();
  }

  syncNow(): void {
    try {
      this.#files.syncNow(this.#handle);
    } catch (error) {
      this.#doubtful = true;
      throw error;
    }
  }

  /**
   * Sees that the file at the path is ours, with the bytes we know of, and that nobody else writes
   * it. One that was removed, replaced or changed is written anew; what stood there is kept aside.
   * @returns what had become of the file, where somebody else had a hand in it
   * @throws StoreError when it cannot be written anew, or another process has the session
   */
  assure(): StoreError | undefined {
    const found = this.#whatBecame();
    if (found === undefined && !this.#doubtful) {
      this.#assureLock();
      this.#pack();
      return undefined;
    }
    this.writeAnew();
    return found;
  }

  /** Nothing that is packed can be taken back: it is done when all that was written is kept. */
  #pack(): void {
    if (this.#loose < packedFrom) return;
    this.#packed.push(deflateRawSync(this.#parts.join('')));
    this.#parts = [];
    this.#loose = 0;
  }

  /** Everything that the file must hold. */
  #contents(): readonly (Uint8Array | string)[] {
    return [this.#found, ...this.#packed.map((one) => inflateRawSync(one)), ...this.#parts];
  }

  #whatBecame(): StoreError | undefined {
    const told = (what: string) =>
      new StoreError(
        'file-changed',
        `The session file was ${what} while it was open; the whole record was written anew.`,
        'Nothing is lost. Keep other programs away from an open session.',
        { path: this.#path },
      );
    const place = this.#files.placeAt(this.#path);
    if (place === undefined) return told('removed or moved');
    if (place.id !== this.#id) return told('replaced');
    if (place.size === this.#size || this.#doubtful) return undefined;
    return told(place.size < this.#size ? 'cut short' : 'written to by another program');
  }

  /**
   * After a failed sync a later success proves nothing (the system may have dropped the pages), so
   * the same bytes go into a new file, are synced there, and take the old one's name.
   */
  writeAnew(): void {
    this.#files.makeFolder(dirname(this.#path));
    this.#assureLock();
    const fresh = `${this.#path}.fresh`;
    const handle = createAnew(this.#files, fresh, this.#contents());
    this.#doubtful = true;
    try {
      const { id } = this.#files.placeOf(handle);
      if (this.#isForeign()) keepAside(this.#files, this.#path);
      this.#files.rename(fresh, this.#path);
      this.#adopt(handle, id);
    } catch (error) {
      if (handle !== this.#handle) discard(this.#files, fresh, handle);
      throw error;
    }
    this.#files.syncFolder(dirname(this.#path));
    this.#doubtful = false;
  }

  /** What stands at the path is not what we wrote there. */
  #isForeign(): boolean {
    const place = this.#files.placeAt(this.#path);
    return place !== undefined && (place.id !== this.#id || place.size > this.#size);
  }

  /** From here on the new file has the name: nothing more may be written to the old one. */
  #adopt(handle: Handle, id: string): void {
    const old = this.#handle;
    this.#handle = handle;
    this.#id = id;
    try {
      this.#files.close(old);
    } catch {
      // The old file has no name any more; that it does not close harms nothing.
    }
  }

  /** The whole record with some lines behind it, as a new file elsewhere. */
  copyTo(path: string, more: readonly string[]): void {
    this.#files.makeFolder(dirname(path));
    this.#files.close(createWhole(this.#files, path, [...this.#contents(), ...more]));
    this.#files.syncFolder(dirname(path));
  }

  close(): void {
    this.#files.close(this.#handle);
  }
}
