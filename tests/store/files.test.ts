import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { StoreError, storeError } from '../../src/store/files.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { writeAll, writeWhole } from '../../src/store/whole-file.ts';
import { failFrom, MemoryFiles } from '../helpers/memory-files.ts';

describe('what the system refuses', () => {
  test.each(['ENOSPC', 'EROFS', 'EACCES', 'ENOENT', 'EIO', 'EMFILE'])(
    '%s becomes one line with a mend',
    (code) => {
      const cause = Object.assign(new Error('x'), { code });

      expect(storeError(cause, '/jobs')).toMatchObject({
        code,
        path: '/jobs',
        cause,
        message: expect.stringMatching(/^[A-Z].*\.$/) as unknown,
        mend: expect.stringMatching(/\.$/) as unknown,
      });
    },
  );

  test('is told once: a told one stays as it is', () => {
    const error = new StoreError('EIO', 'm', 'n', { path: 'p' });

    expect(storeError(error, 'q')).toBe(error);
  });

  test('our own mistakes are no disk trouble', () => {
    expect(() => storeError(new TypeError('x'), 'p')).toThrow(TypeError);
  });
});

describe('a file written whole or not at all', () => {
  const before = 'the account of yesterday';

  test('takes the place of the old one and is on the disk', () => {
    const files = new MemoryFiles({ 'out/a.md': before, 'out/a.md.fresh': 'left by a crash' });
    files.atOnce = 3;

    writeWhole(files, 'out/a.md', 'new – text');

    expect(Buffer.from(files.afterPowerLoss('out/a.md') ?? '').toString()).toBe('new – text');
    expect(files.list('out')).toEqual(['a.md']);
    expect(files.openHandles).toBe(0);
  });

  test('refused at any call leaves the old one or the new one, nothing between', () => {
    const left = Array.from({ length: 12 }, (_, index) => {
      const files = new MemoryFiles({ 'out/a.md': before });
      files.refuse = failFrom(index + 1, 'EIO');
      try {
        writeWhole(files, 'out/a.md', 'new text');
      } catch {
        // Told by whoever asked; here it is the file that counts.
      }
      return [
        files.text('out/a.md'),
        Buffer.from(files.afterPowerLoss('out/a.md') ?? '').toString(),
      ];
    });

    expect(left.flat().filter((text) => text !== before && text !== 'new text')).toEqual([]);
    expect(left.at(-1)).toEqual(['new text', 'new text']);
  });

  test('what a full disk left of a line is cut off again', () => {
    const files = new MemoryFiles({ 'a.jsonl': 'line\n' });
    const handle = files.openAppend('a.jsonl');
    files.room = 5;

    expect(() => writeAll(files, handle, 'another line\n')).toThrow('ENOSPC');
    expect(files.text('a.jsonl')).toBe('line\n');
  });
});

describe('the disk of this machine', () => {
  let folder = '';
  const at = (name: string) => join(folder, name);
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'droplight-files-'));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  test('a new file is its owner’s only, and is never written over', () => {
    nodeFiles.close(nodeFiles.create(at('a')));

    expect(statSync(at('a')).mode & 0o777).toBe(0o600);
    expect(() => nodeFiles.create(at('a'))).toThrow('EEXIST');
  });

  test('writing adds at the end, cutting takes away from it', async () => {
    writeFileSync(at('a'), 'one\n');
    const handle = nodeFiles.openAppend(at('a'));
    nodeFiles.write(handle, Buffer.from('two\nthree'));
    nodeFiles.truncate(handle, 8);
    await nodeFiles.sync(handle);
    nodeFiles.syncNow(handle);
    const size = nodeFiles.size(handle);
    nodeFiles.close(handle);

    expect(Buffer.from(nodeFiles.read(at('a'))).toString()).toBe('one\ntwo\n');
    expect(size).toBe(8);
  });

  test('a link is not followed, neither to write nor to create', () => {
    writeFileSync(at('target'), 'x');
    symlinkSync(at('target'), at('link'));
    symlinkSync(at('nowhere'), at('loose'));

    expect(() => nodeFiles.openAppend(at('link'))).toThrow('ELOOP');
    expect(() => nodeFiles.create(at('loose'))).toThrow('EEXIST');
  });

  test('a folder or a pipe is no session file', () => {
    mkdirSync(at('folder'));
    execFileSync('mkfifo', [at('pipe')]);

    expect(() => nodeFiles.openAppend(at('folder'))).toThrow('EISDIR');
    expect(() => nodeFiles.openAppend(at('pipe'))).toThrow('This is no regular file.');
  });

  test('folders are made with those above them, for their owner only', () => {
    nodeFiles.makeFolder(at('a/b'));
    nodeFiles.makeFolder(at('a/b'));

    expect(statSync(at('a/b')).mode & 0o777).toBe(0o700);
  });

  // That one made by another process meanwhile is as good as ours is tried by `torture/processes.ts`.
  test('a name that leads nowhere is no folder, and ends', () => {
    symlinkSync(at('nowhere'), at('loose'));

    expect(() => nodeFiles.makeFolder(at('loose'))).toThrow('ENOENT');
  });

  test('a folder under a file is refused', () => {
    writeFileSync(at('notes'), 'a file');

    expect(() => nodeFiles.makeFolder(at('notes/jobs'))).toThrow('This is a file, not a folder.');
  });

  // A parent that answers "no such file" for every new name: making all parents in one call never ends.
  test.skipIf(process.platform !== 'linux')(
    'a folder that cannot be made is refused at once',
    () => {
      expect(() => nodeFiles.makeFolder('/proc/nowhere/jobs')).toThrow('ENOENT');
    },
  );

  test('names are listed in order, moved and removed', () => {
    for (const name of ['b', 'a', 'c']) writeFileSync(at(name), name);
    nodeFiles.rename(at('c'), at('d'));
    nodeFiles.remove(at('b'));
    nodeFiles.syncFolder(folder);

    expect(nodeFiles.list(folder)).toEqual(['a', 'd']);
    expect(nodeFiles.list(at('gone'))).toEqual([]);
    expect([nodeFiles.exists(at('a')), nodeFiles.exists(at('b'))]).toEqual([true, false]);
  });
});
