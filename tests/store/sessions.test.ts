import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import {
  createSession,
  loadSession,
  openSession,
  type Disk,
  type HeldSession,
} from '../../src/store/sessions.ts';
import type { Shelf } from '../../src/store/shelf.ts';
import { failFrom, MemoryFiles } from '../helpers/memory-files.ts';
import { note, readBack, sessionLines } from '../helpers/session-file.ts';
import { headerFor } from '../helpers/story.ts';

// Locks are the system's own, so the folder is a real one; the files in it are in memory.
let folder = '';
let opened: HeldSession[] = [];

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'droplight-sessions-'));
});

afterEach(() => {
  for (const one of opened.splice(0)) one.release();
  rmSync(folder, { recursive: true });
});

const diskOf = (files: MemoryFiles): Disk => ({
  files,
  holder: 'process 1',
});

const quiet = { kept: () => {}, trouble: () => {} };

function open(files: MemoryFiles, path: string) {
  const session = openSession(diskOf(files), path, quiet);
  if (session.kind === 'good') opened.push(session.value);
  return session;
}

const job = () => join(folder, 'job.jsonl');
const holding = (text: string | Uint8Array) => new MemoryFiles({ [job()]: text });
const walk = sessionLines();

describe('a new session', () => {
  test('is on the disk with its name before anything else happens', () => {
    const files = new MemoryFiles();
    const path = createSession(diskOf(files), folder, headerFor());

    expect(path).toBe(join(folder, '2026-04-11-1000-orchard-van-no-light.jsonl'));
    expect(readBack(files.afterPowerLoss(path) ?? '')).toEqual({
      events: [],
      damage: [],
      openEnd: false,
    });
    expect(files.openHandles).toBe(0);
  });

  test('has its tree understood once, from its making to the two readings of its opening', () => {
    const files = new MemoryFiles();
    const shelf: Shelf = new Map();
    const path = createSession(diskOf(files), folder, headerFor(), shelf);
    const [made] = shelf.values();
    const session = openSession(diskOf(files), path, quiet, shelf);
    if (session.kind === 'bad') throw new Error('the session does not open');
    opened.push(session.value);

    expect(made).toBeDefined();
    expect(shelf.size).toBe(1);
    expect(session.value.recovered.header.trees).toBe(made?.trees);
  });

  test('of the same minute and vehicle gets a name of its own, in the file too', () => {
    const files = new MemoryFiles();
    createSession(diskOf(files), folder, headerFor());
    const second = createSession(diskOf(files), folder, headerFor());

    const read = loadSession(files, second);
    expect(second).toBe(join(folder, '2026-04-11-1000-orchard-van-no-light-2.jsonl'));
    expect(read).toMatchObject({
      value: { header: { id: '2026-04-11-1000-orchard-van-no-light-2' } },
    });
  });

  test.each([1, 2, 3, 4, 5, 6, 7])('refused at call %i says where and why', (nth) => {
    const files = new MemoryFiles();
    files.refuse = failFrom(nth, 'EROFS');

    expect(() => createSession(diskOf(files), folder, headerFor())).toThrow(
      expect.objectContaining({
        name: 'StoreError',
        code: 'EROFS',
        path: expect.stringContaining(folder) as unknown,
      }),
    );
  });

  test('that finds the disk full leaves nothing behind', () => {
    const files = new MemoryFiles();
    files.room = 100;
    expect(() => createSession(diskOf(files), folder, headerFor())).toThrow('The disk is full.');

    expect({ left: files.list(folder), handles: files.openHandles }).toEqual({
      left: [],
      handles: 0,
    });
  });
});

describe('opening a session', () => {
  test('gives what it holds and takes more', async () => {
    const files = holding(walk.join(''));
    const session = open(files, job());
    if (session.kind === 'bad') throw new Error('it should open');
    const n = walk.length;

    session.value.journal.append(note(n));
    await session.value.journal.settled();

    expect(session.value.recovered.events.map((event) => event.n)).toEqual(
      walk.slice(1).map((_, index) => index + 1),
    );
    expect(session.value.torn).toBe(0);
    expect(readBack(files.text(job()))).toMatchObject({
      events: [...walk.slice(1).map((_, index) => index + 1), n],
      damage: [],
    });
  });

  test('a second time while it is open is refused with who has it', () => {
    const files = holding(walk.join(''));
    open(files, job());

    expect(open(files, job())).toMatchObject({
      problems: [{ code: 'locked', message: 'This session is open already, in process 1.' }],
    });
  });

  test('after it was released it opens again', () => {
    const files = holding(walk.join(''));
    const first = openSession(diskOf(files), job(), quiet);
    if (first.kind === 'good') first.value.release();

    expect(open(files, job()).kind).toBe('good');
    expect(files.openHandles).toBe(1);
  });

  test('refused while its last line is ended leaves no file open and no lock', () => {
    const files = holding(walk.join('').slice(0, -30));
    files.refuse = ({ name }) => (name === 'write' ? 'ENOSPC' : undefined);

    expect(open(files, job())).toMatchObject({ problems: [{ code: 'ENOSPC' }] });
    expect(files.openHandles).toBe(0);

    files.refuse = () => undefined;
    expect(open(files, job()).kind).toBe('good');
  });

  test('with a torn end tells its bytes, and the next event is read back', () => {
    const files = holding(walk.join('').slice(0, -30));
    const session = open(files, job());
    if (session.kind === 'bad') throw new Error('it should open');
    const n = walk.length - 1;

    session.value.journal.append(note(n));
    session.value.journal.settle();

    expect(session.value.torn).toBe((walk.at(-1) ?? '').length - 30);
    expect(readBack(files.text(job()))).toMatchObject({
      events: walk.slice(1).map((_, index) => index + 1),
      damage: [`line ${walk.length} torn`],
    });
  });

  test('that lost only its last newline has lost nothing', () => {
    const session = open(holding(walk.join('').slice(0, -1)), job());

    expect(session).toMatchObject({
      value: { torn: 0, recovered: { damage: [], openEnd: false } },
    });
  });

  test.each([
    ['that is no session', 'bench notes\n', 'not-a-session'],
    ['whose header was changed', walk.join('').replace('Orchard', 'Garden'), 'altered-header'],
  ])('%s is refused and stays unlocked', (_, text, code) => {
    const files = holding(text);

    expect(open(files, job())).toMatchObject({ problems: [{ code }] });
    expect(open(files, job())).toMatchObject({ problems: [{ code }] });
  });

  test('that is not there is refused', () => {
    expect(open(new MemoryFiles(), job())).toMatchObject({
      problems: [{ code: 'ENOENT', file: job() }],
    });
  });

  test('that the system refuses to write is told and stays unlocked', () => {
    const files = holding(walk.join(''));
    files.refuse = ({ name }) => (name === 'openAppend' ? 'EACCES' : undefined);
    expect(open(files, job())).toMatchObject({ problems: [{ code: 'EACCES' }] });

    files.refuse = () => undefined;
    expect(open(files, job()).kind).toBe('good');
  });

  test('where no lock can be had is refused', () => {
    const path = join(folder, 'gone', 'job.jsonl');

    expect(open(new MemoryFiles({ [path]: walk.join('') }), path)).toMatchObject({
      problems: [{ code: 'no-lock' }],
    });
  });
});
