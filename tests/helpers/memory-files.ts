import type { Age, Files, Place } from '../../src/store/files.ts';

/** One file's content and how much of it a power loss would leave. */
type Node = { id: number; bytes: number[]; safe: number; spoiled: { from: number; to: number }[] };

export type Call = { readonly number: number; readonly name: keyof Files };

/** Whether a call is refused, and with which code of the system. */
export type Refusal = (call: Call) => string | undefined;

const refusal = (code: string): Error => Object.assign(new Error(`planted: ${code}`), { code });

/** Refuses `times` calls from the n-th on, of any kind or of one kind. */
export const failFrom =
  (first: number, code: string, times = 1): Refusal =>
  ({ number }) =>
    number >= first && number < first + times ? code : undefined;

/**
 * A disk in memory that forgets what was not synced, as a power loss does. A refused sync spoils
 * what it should have kept: a later sync that succeeds says nothing of those bytes (as on Linux).
 */
export class MemoryFiles implements Files {
  /** Every call asked for, in order: loop n upward until a run makes fewer. */
  readonly calls: Call[] = [];
  refuse: Refusal = () => undefined;
  /** Bytes the disk still takes; a write takes what fits, the next one meets ENOSPC. */
  room = Infinity;
  /** Most bytes that one write takes. */
  atOnce = Infinity;
  /** Held up before each background sync ends, so that a test can act meanwhile. */
  gate: () => Promise<void> = () => Promise.resolve();
  readonly #names: Map<string, Node>;
  #safeNames: Map<string, Node>;
  readonly #folders = new Set<string>();
  readonly #open = new Map<number, Node>();
  #nextHandle = 3;
  #lastId = 0;

  constructor(files: Readonly<Record<string, string | Uint8Array>> = {}) {
    this.#names = new Map(
      Object.entries(files).map(([path, content]) => {
        const bytes = [...(typeof content === 'string' ? Buffer.from(content) : content)];
        return [path, { id: this.#nextId(), bytes, safe: bytes.length, spoiled: [] }];
      }),
    );
    this.#safeNames = new Map(this.#names);
  }

  create(path: string): number {
    this.#call('create');
    if (this.#names.has(path)) throw refusal('EEXIST');
    this.#names.set(path, { id: this.#nextId(), bytes: [], safe: 0, spoiled: [] });
    return this.#hand(path);
  }

  openAppend(path: string): number {
    this.#call('openAppend');
    return this.#hand(path);
  }

  write(handle: number, bytes: Uint8Array): number {
    this.#call('write');
    const node = this.#node(handle);
    if (this.room <= 0) throw refusal('ENOSPC');
    const taken = bytes.subarray(0, Math.min(this.room, this.atOnce));
    node.bytes.push(...taken);
    this.room -= taken.length;
    return taken.length;
  }

  size(handle: number): number {
    this.#call('size');
    return this.#node(handle).bytes.length;
  }

  placeOf(handle: number): Place {
    this.#call('placeOf');
    const { id, bytes } = this.#node(handle);
    return { id: String(id), size: bytes.length, kind: 'file' };
  }

  placeAt(path: string): Place | undefined {
    this.#call('placeAt');
    if (this.#folders.has(path)) return { id: path, size: 0, kind: 'folder' };
    const node = this.#names.get(path);
    return node && { id: String(node.id), size: node.bytes.length, kind: 'file' };
  }

  realPath(path: string): string {
    this.#named(path);
    return path;
  }

  truncate(handle: number, length: number): void {
    this.#call('truncate');
    const node = this.#node(handle);
    this.room += node.bytes.length - length;
    node.bytes.length = length;
    node.safe = Math.min(node.safe, length);
  }

  async sync(handle: number): Promise<void> {
    const node = this.#node(handle);
    const upTo = node.bytes.length;
    const code = this.#refused('sync');
    if (code !== undefined) this.#spoil(node, upTo);
    await this.gate();
    if (code !== undefined) throw refusal(code);
    node.safe = Math.max(node.safe, upTo);
  }

  syncNow(handle: number): void {
    const node = this.#node(handle);
    const code = this.#refused('syncNow');
    if (code !== undefined) {
      this.#spoil(node, node.bytes.length);
      throw refusal(code);
    }
    node.safe = node.bytes.length;
  }

  close(handle: number): void {
    this.#node(handle);
    this.#open.delete(handle);
    this.#call('close');
  }

  sizeOf(path: string): number {
    this.#call('sizeOf');
    return this.#named(path).bytes.length;
  }

  ageOf(path: string): Age | undefined {
    const node = this.#names.get(path);
    return node && { size: node.bytes.length, changed: String(node.bytes) };
  }

  read(path: string): Uint8Array {
    this.#call('read');
    return Uint8Array.from(this.#named(path).bytes);
  }

  readOpen(handle: number): Uint8Array {
    this.#call('readOpen');
    return Uint8Array.from(this.#node(handle).bytes);
  }

  readStart(path: string, length: number): Uint8Array {
    this.#call('readStart');
    return Uint8Array.from(this.#named(path).bytes.slice(0, length));
  }

  list(folder: string): readonly string[] {
    const inside = [...this.#names.keys()].filter((path) => path.startsWith(`${folder}/`));
    return inside.map((path) => path.slice(folder.length + 1)).toSorted();
  }

  makeFolder(folder: string): void {
    this.#call('makeFolder');
    this.#folders.add(folder);
  }

  exists(path: string): boolean {
    return this.#names.has(path);
  }

  syncFolder(): void {
    this.#call('syncFolder');
    this.#safeNames = new Map(this.#names);
  }

  rename(from: string, to: string): void {
    this.#call('rename');
    this.#names.set(to, this.#named(from));
    this.#names.delete(from);
  }

  link(from: string, to: string): void {
    this.#call('link');
    if (this.#names.has(to)) throw refusal('EEXIST');
    this.#names.set(to, this.#named(from));
  }

  remove(path: string): void {
    this.#call('remove');
    this.#named(path);
    this.#names.delete(path);
  }

  /** What stands in a file now: what another process, or a killed one's successor, reads. */
  text(path: string): string {
    return Buffer.from(this.#named(path).bytes).toString();
  }

  /** Handles not closed yet. */
  get openHandles(): number {
    return this.#open.size;
  }

  /** What a power loss now would leave of a file; undefined when its name was not kept. */
  afterPowerLoss(path: string): Uint8Array | undefined {
    const node = this.#safeNames.get(path);
    if (node === undefined) return undefined;
    const left = Uint8Array.from(node.bytes.slice(0, node.safe));
    for (const { from, to } of node.spoiled) left.fill(0, from, to);
    return left;
  }

  #nextId(): number {
    this.#lastId += 1;
    return this.#lastId;
  }

  #spoil(node: Node, to: number): void {
    if (to > node.safe) node.spoiled.push({ from: node.safe, to });
  }

  #refused(name: keyof Files): string | undefined {
    const call = { number: this.calls.length + 1, name };
    this.calls.push(call);
    return this.refuse(call);
  }

  #call(name: keyof Files): void {
    const code = this.#refused(name);
    if (code !== undefined) throw refusal(code);
  }

  #hand(path: string): number {
    const node = this.#named(path);
    const handle = this.#nextHandle;
    this.#nextHandle += 1;
    this.#open.set(handle, node);
    return handle;
  }

  #named(path: string): Node {
    const node = this.#names.get(path);
    if (node === undefined) throw refusal('ENOENT');
    return node;
  }

  #node(handle: number): Node {
    const node = this.#open.get(handle);
    if (node === undefined) throw refusal('EBADF');
    return node;
  }
}
