import { bad, good, type Parsed, type Problem } from '../core/problem.ts';

/** An open file, as the port hands it out. */
export type Handle = number;

/** Which file it is, whatever its name, and its bytes. */
export type Place = {
  /** Device and inode: two names of one file have the same, a copy has another. */
  readonly id: string;
  readonly size: number;
  /** `other`: a link, a pipe or a device. */
  readonly kind: 'file' | 'folder' | 'other';
};

/** When a file was last changed, by the system's own word: its bytes, or anything about it. */
export type Age = { readonly size: number; readonly changed: string };

/**
 * The few things we ask of a disk. Tests pass one in memory that can fail the n-th call, write
 * short or lose what was not synced.
 */
export interface Files {
  /** Creates a file that must not be there yet, for appending; only its owner may read it. */
  create(path: string): Handle;
  /** Opens a regular file of ours for appending; never follows a link. */
  openAppend(path: string): Handle;
  /** Writes some of the bytes at the end; returns how many, which may be fewer than given. */
  write(handle: Handle, bytes: Uint8Array): number;
  size(handle: Handle): number;
  /** Which file is open. */
  placeOf(handle: Handle): Place;
  /** Which file has a name now; a link is itself, not what it points to. */
  placeAt(path: string): Place | undefined;
  /** Where a path leads, from the root: every link in it followed. */
  realPath(path: string): string;
  /** Cuts the file to a length: used only on bytes that the disk has just refused. */
  truncate(handle: Handle, length: number): void;
  sync(handle: Handle): Promise<void>;
  syncNow(handle: Handle): void;
  close(handle: Handle): void;
  /** Bytes in a file that is not open; refuses what is no regular file, as that may never end. */
  sizeOf(path: string): number;
  /** Its size and times without reading it; undefined where no file has the name. */
  ageOf(path: string): Age | undefined;
  /** A regular file whole; never waits for a pipe. */
  read(path: string): Uint8Array;
  /** The same of an open one. */
  readOpen(handle: Handle): Uint8Array;
  /** The beginning of a regular file, at most this many bytes. */
  readStart(path: string, length: number): Uint8Array;
  /** File names in a folder; an empty list when there is no such folder. */
  list(folder: string): readonly string[];
  makeFolder(folder: string): void;
  exists(path: string): boolean;
  /** Makes new names in a folder durable. */
  syncFolder(folder: string): void;
  rename(from: string, to: string): void;
  /** Gives a file a second name; refuses one that is taken. */
  link(from: string, to: string): void;
  remove(path: string): void;
}

/** What a disk or the system refused, with its own code (ENOSPC, EACCES ...) and where. */
export class StoreError extends Error {
  readonly code: string;
  readonly path: string;
  readonly mend: string;

  constructor(
    code: string,
    message: string,
    mend: string,
    options: { path: string; cause?: unknown },
  ) {
    super(message, { cause: options.cause });
    this.name = 'StoreError';
    this.code = code;
    this.path = options.path;
    this.mend = mend;
  }
}

const told: Readonly<Record<string, readonly [message: string, mend: string]>> = {
  ENOSPC: ['The disk is full.', 'Free some room, then try again.'],
  EDQUOT: ['Your share of the disk is used up.', 'Free some room, then try again.'],
  EROFS: ['The folder is read-only.', 'Choose another folder with --sessions or in the settings.'],
  EACCES: ['There is no permission for this.', 'Choose another folder, or mend its permissions.'],
  EPERM: ['There is no permission for this.', 'Choose another folder, or mend its permissions.'],
  ENOENT: ['There is no such file or folder.', 'Check the name.'],
  ENOTDIR: ['A part of this path is no folder.', 'Check the name.'],
  EISDIR: ['This is a folder, not a file.', 'Name the file in it.'],
  ELOOP: ['This is a link, and links are not followed here.', 'Name the file itself.'],
  EEXIST: ['There is a file of this name already.', 'Choose another name.'],
  EIO: ['The disk does not answer properly.', 'Copy the record to another disk soon.'],
};

/** Turns what the system threw into one clear line; anything else is thrown on as our own bug. */
export function storeError(error: unknown, path: string): StoreError {
  if (error instanceof StoreError) return error;
  const code = error instanceof Error && 'code' in error ? String(error.code) : undefined;
  if (code === undefined) throw error;
  const [message, mend] = told[code] ?? [`The system refused this (${code}).`, 'Try again.'];
  return new StoreError(code, message, mend, { path, cause: error });
}

/** What the disk refused, told as any other problem. */
export const refusal = ({ code, path, message, mend }: StoreError): Problem => ({
  code,
  file: path,
  message,
  mend,
});

/** Runs what the disk may refuse: a refusal is returned, anything else is thrown on. */
export function attempt<T>(path: string, job: () => T): Parsed<T> {
  try {
    return good(job());
  } catch (error) {
    return bad(refusal(storeError(error, path)));
  }
}
