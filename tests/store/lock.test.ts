import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, readdirSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { takeLock as lockOf } from '../../src/store/lock.ts';
import { nodeFiles } from '../../src/store/node-files.ts';

const source = resolve(import.meta.dirname, '../../src/store/lock.ts');
const disk = resolve(import.meta.dirname, '../../src/store/node-files.ts');
const child = `
  import { takeLock } from ${JSON.stringify(source)};
  import { nodeFiles } from ${JSON.stringify(disk)};
  const lock = takeLock(nodeFiles, process.argv[1], 'process ' + process.pid);
  console.log(lock.kind);
  setInterval(() => lock, 1000);
`;

let folder = '';
let session = '';
const children: ChildProcess[] = [];
const takeLock = (path: string, holder: string) => lockOf(nodeFiles, path, holder);

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

test('one writer holds the session, a second is told who', () => {
  const first = takeLock(session, 'process 1 on bench');
  const second = takeLock(session, 'process 2 on bench');

  expect(first.kind).toBe('held');
  expect(second).toEqual({ kind: 'taken', by: 'process 1 on bench' });
});

test('released, it can be taken again, as often as one likes', () => {
  for (let round = 0; round < 3; round += 1) {
    const lock = takeLock(session, 'us');
    expect(lock.kind).toBe('held');
    (lock as { release: () => void }).release();
  }
});

test('two sessions in one folder do not lock each other', () => {
  expect(takeLock(session, 'us').kind).toBe('held');
  expect(takeLock(join(folder, 'other.jsonl'), 'us').kind).toBe('held');
});

test('where there is no folder nobody can be sure', () => {
  expect(takeLock(join(folder, 'gone', 'job.jsonl'), 'us')).toMatchObject({
    kind: 'unsure',
    why: expect.stringMatching(/\w/) as unknown,
  });
});

test('a lock that nobody names any more is still held', () => {
  takeLock(session, 'us');
  setFlagsFromString('--expose-gc');
  (runInNewContext('gc') as () => void)();

  expect(takeLock(session, 'another')).toEqual({ kind: 'taken', by: 'us' });
});

test('another process is refused while the first lives, and kill -9 frees the lock at once', async () => {
  const first = await other();
  expect(first.said).toBe('held');
  expect(takeLock(session, 'us').kind).toBe('taken');
  expect((await other()).said).toBe('taken');

  first.process.kill('SIGKILL');
  await once(first.process, 'exit');

  expect(takeLock(session, 'us').kind).toBe('held');
  expect((await other()).said).toBe('taken');
});

test.each([
  ['a link', () => symlinkSync(join(folder, 'precious'), `${session}.lock`)],
  ['a folder', () => mkdirSync(`${session}.lock`)],
  ['a text', () => writeFileSync(`${session}.lock`, 'precious')],
])('%s in place of the lock is neither followed nor written to', (_, plant) => {
  plant();

  expect(takeLock(session, 'us').kind).toBe('unsure');
  expect(readdirSync(folder)).toEqual(['job.jsonl.lock']);
});

test.each(['-journal', '-wal', '-shm'])('a pipe in place of its %s is not waited at', (ending) => {
  execFileSync('mkfifo', [`${session}.lock${ending}`]);

  expect(takeLock(session, 'us')).toMatchObject({
    kind: 'unsure',
    why: 'What stands at its name is no regular file.',
  });
});

test('a lock whose file is removed is taken anew, unless another has the session by then', () => {
  const first = takeLock(session, 'process 1');
  if (first.kind !== 'held') throw new Error('it should be free');
  rmSync(`${session}.lock`);
  first.assure();
  expect(takeLock(session, 'process 2')).toEqual({ kind: 'taken', by: 'process 1' });

  rmSync(`${session}.lock`);
  const second = takeLock(session, 'process 2');

  expect(second.kind).toBe('held');
  expect(() => first.assure()).toThrow('it is open now in process 2.');
});
