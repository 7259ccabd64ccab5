import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { takeLock, type Notes } from '../../src/store/lock.ts';

const source = resolve(import.meta.dirname, '../../src/store/lock.ts');
const child = `
  import { readFileSync, writeFileSync } from 'node:fs';
  import { takeLock } from ${JSON.stringify(source)};
  const notes = { read: (path) => readFileSync(path, 'utf8'), write: writeFileSync };
  const lock = takeLock(process.argv[1], 'process ' + process.pid, notes);
  console.log(lock.kind);
  setInterval(() => {}, 1000);
`;

let folder = '';
let session = '';
const children: ChildProcess[] = [];
const written = new Map<string, string>();
const notes: Notes = {
  read: (path) => written.get(path),
  write: (path, text) => void written.set(path, text),
};

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'droplight-lock-'));
  session = join(folder, 'job.jsonl');
});

afterEach(() => {
  for (const one of children.splice(0)) one.kill('SIGKILL');
  rmSync(folder, { recursive: true });
});

/** Another process that takes the lock and stays; resolves with what it was told. */
async function other(): Promise<{ process: ChildProcess; said: string }> {
  const one = spawn(process.execPath, ['--input-type=module', '-e', child, session], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  children.push(one);
  const [said] = (await once(one.stdout, 'data')) as [Buffer];
  return { process: one, said: said.toString().trim() };
}

test('a holder that cannot leave its name holds all the same, and lets go', () => {
  const mute: Notes = {
    ...notes,
    write: () => {
      throw new Error('no room for a note');
    },
  };
  const first = takeLock(session, 'process 1 on bench', mute);
  const second = takeLock(session, 'process 2 on bench', mute);

  expect([first.kind, second]).toEqual(['held', { kind: 'taken', by: 'another process' }]);
  if (first.kind === 'held') first.release();
  const third = takeLock(session, 'process 3 on bench', mute);
  expect(third.kind).toBe('held');
  if (third.kind === 'held') third.release();
});

test('one writer holds the session, a second is told who', () => {
  const first = takeLock(session, 'process 1 on bench', notes);
  const second = takeLock(session, 'process 2 on bench', notes);

  expect(first.kind).toBe('held');
  expect(second).toEqual({ kind: 'taken', by: 'process 1 on bench' });
});

test('released, it can be taken again, as often as one likes', () => {
  for (let round = 0; round < 3; round += 1) {
    const lock = takeLock(session, 'us', notes);
    expect(lock.kind).toBe('held');
    (lock as { release: () => void }).release();
  }
});

test('two sessions in one folder do not lock each other', () => {
  expect(takeLock(session, 'us', notes).kind).toBe('held');
  expect(takeLock(join(folder, 'other.jsonl'), 'us', notes).kind).toBe('held');
});

test('without a note the holder is another process', () => {
  takeLock(session, 'us', notes);

  expect(takeLock(session, 'us', { ...notes, read: () => undefined })).toEqual({
    kind: 'taken',
    by: 'another process',
  });
});

test('where there is no folder nobody can be sure', () => {
  expect(takeLock(join(folder, 'gone', 'job.jsonl'), 'us', notes)).toMatchObject({
    kind: 'unsure',
    why: expect.stringMatching(/\w/) as unknown,
  });
});

test('a lock that nobody names any more is still held', () => {
  takeLock(session, 'us', notes);
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();

  expect(takeLock(session, 'another', notes)).toEqual({ kind: 'taken', by: 'us' });
});

test('another process is refused while the first lives, and kill -9 frees the lock at once', async () => {
  const first = await other();
  expect(first.said).toBe('held');
  expect(takeLock(session, 'us', notes).kind).toBe('taken');
  expect((await other()).said).toBe('taken');

  first.process.kill('SIGKILL');
  await once(first.process, 'exit');

  expect(takeLock(session, 'us', notes).kind).toBe('held');
  expect((await other()).said).toBe('taken');
});
