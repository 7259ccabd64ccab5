import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { maxPicture } from '../../src/core/picture/picture.ts';
import { nodeFiles } from '../../src/store/node-files.ts';
import { attempt } from '../../src/store/files.ts';
import { findPhoto, keepPhoto, loadPhoto, pictureOf, takePhoto } from '../../src/store/photos.ts';
import { trusted } from '../../src/core/problem.ts';
import { scratch } from '../helpers/commands.ts';
import { drawnJpeg, drawnPicture } from '../helpers/drawn-picture.ts';
import { failFrom, MemoryFiles } from '../helpers/memory-files.ts';

const png = drawnPicture('the fuse');
const picture = trusted(pictureOf(png));

/** A folder with one photo in it, and what the program may be told of it. */
function album() {
  const folder = scratch();
  writeFileSync(join(folder, 'the fuse (1).png'), png);
  const roots = { current: folder, home: folder };
  const load = (typed: string) => {
    const read = loadPhoto(nodeFiles, typed, roots);
    return read.kind === 'good' ? read.value.kind : read.problems[0]?.code;
  };
  return { folder, roots, load, session: join(folder, 'job.jsonl') };
}

test.each<[as: string, typed: (folder: string) => string]>([
  ['from the root', (folder) => `${folder}/the fuse (1).png`],
  ['from where the program was started', () => 'the fuse (1).png'],
  ['from the home folder', () => '~/the fuse (1).png'],
  ['in quotes', (folder) => `'${folder}/the fuse (1).png' `],
  ['in double quotes', () => '"the fuse (1).png"'],
  ['with backslashes, as terminals drop it', () => String.raw`the\ fuse\ \(1\).png`],
  ['as an address', (folder) => `file://${encodeURI(`${folder}/the fuse (1).png`)}`],
  ['as an address of this machine', (folder) => `file://localhost${folder}/the%20fuse%20(1).png`],
])('a photo is found by its path %s', (_, typed) => {
  const { folder, load } = album();

  expect(load(typed(folder))).toBe('png');
});

test('what a name says counts for nothing', () => {
  const { folder, load } = album();
  writeFileSync(join(folder, 'a.png'), drawnJpeg());
  writeFileSync(join(folder, 'b.jpg'), 'words');

  expect([load('a.png'), load('b.jpg')]).toEqual(['jpg', 'photo-kind']);
});

test.each<[what: string, make: (path: string, folder: string) => void, code: string]>([
  ['nothing there', () => {}, 'photo-missing'],
  ['a folder', (path) => mkdirSync(path), 'photo-no-file'],
  ['a pipe', (path) => execFileSync('mkfifo', [path]), 'photo-no-file'],
  ['an empty file', (path) => writeFileSync(path, ''), 'photo-empty'],
  ['half of one', (path) => writeFileSync(path, png.subarray(0, 5000)), 'photo-cut-short'],
  ['a text', (path) => writeFileSync(path, 'a shopping list'), 'photo-kind'],
  ['a link to one elsewhere', (path) => symlinkSync(elsewhere(), path), 'photo-link'],
  ['a link to nothing', (path) => symlinkSync('gone.png', path), 'ENOENT'],
  [
    'one that is too large',
    (path) => {
      writeFileSync(path, png);
      truncateSync(path, maxPicture + 1);
    },
    'photo-too-big',
  ],
])('%s is told in one clear problem', (_, make, code) => {
  const { folder, load } = album();
  make(join(folder, 'one.png'), folder);

  expect(load('one.png')).toBe(code);
});

function elsewhere(): string {
  const path = join(scratch(), 'other.png');
  writeFileSync(path, png);
  return path;
}

test('a link within its folder leads to the photo', () => {
  const { folder, load } = album();
  symlinkSync('the fuse (1).png', join(folder, 'newest.png'));

  expect(load('newest.png')).toBe('png');
});

test.skipIf(process.getuid?.() === 0)('a photo without permission is told so', () => {
  const { folder, load } = album();
  chmodSync(join(folder, 'the fuse (1).png'), 0);

  expect(load('the fuse (1).png')).toBe('EACCES');
});

test('a photo is copied beside its session, numbered, with the words of its caption', () => {
  const { session, folder, roots } = album();
  const take = (caption?: string) =>
    trusted(takePhoto(nodeFiles, session, { file: 'the fuse (1).png', caption }, roots));

  const first = take('Bulkhead connector: green!');
  const second = take();

  const sha256 = createHash('sha256').update(png).digest('hex');
  expect(first).toEqual({
    file: 'job.photos/01-bulkhead-connector-green.png',
    sha256,
    bytes: png.length,
  });
  expect(second.file).toBe('job.photos/02-photo.png');
  expect(Buffer.compare(readFileSync(join(folder, first.file)), png)).toBe(0);
  expect(findPhoto(nodeFiles, session, first).kind).toBe('there');
});

test('no link is followed to write', () => {
  const { session, folder, roots } = album();
  const other = scratch();
  symlinkSync(other, join(folder, 'job.photos'));

  const taken = takePhoto(nodeFiles, session, { file: 'the fuse (1).png' }, roots);

  expect(taken).toMatchObject({ kind: 'bad', problems: [{ code: 'ELOOP' }] });
  expect(readdirSync(other)).toEqual([]);
});

test('a session that moved with its photos, under another name too, still has them', () => {
  const { session, folder } = album();
  const kept = keepPhoto(nodeFiles, session, picture, '');
  const other = scratch();
  writeFileSync(session, '');
  renameSync(join(folder, 'job.photos'), join(other, 'renamed.photos'));
  copyFileSync(session, join(other, 'renamed.jsonl'));

  expect(findPhoto(nodeFiles, join(other, 'renamed.jsonl'), kept).kind).toBe('there');
  expect(findPhoto(nodeFiles, session, kept).kind).toBe('missing');
});

test.each<[what: string, harm: (path: string) => void, kind: string]>([
  [
    'one byte of it changed',
    (path) => writeFileSync(path, Buffer.from(png).fill(1, 900, 901)),
    'changed',
  ],
  ['no picture any more', (path) => writeFileSync(path, 'words'), 'changed'],
  ['far larger', (path) => truncateSync(path, maxPicture + 1), 'changed'],
  [
    'a link',
    (path) => {
      renameSync(path, `${path}.away`);
      symlinkSync(`${path}.away`, path);
    },
    'missing',
  ],
])('a photo that is %s is not the one that was kept', (_, harm, kind) => {
  const { session, folder } = album();
  const kept = keepPhoto(nodeFiles, session, picture, '');
  harm(join(folder, kept.file));

  expect(findPhoto(nodeFiles, session, kept).kind).toBe(kind);
});

test.each(['../the fuse (1).png', '/etc/hostname', 'job.photos/../../x.png', ''])(
  'the name %j in a record leads nowhere',
  (file) => {
    const { session } = album();

    expect(findPhoto(nodeFiles, session, { file })).toEqual({ kind: 'missing' });
  },
);

/** What stands under the name of a photo when the n-th call to the disk was refused. */
function afterRefusal(n: number) {
  const files = new MemoryFiles();
  files.refuse = failFrom(n, 'ENOSPC');
  const kept = attempt('/s', () => keepPhoto(files, '/s/job.jsonl', picture, 'fuse'));
  files.refuse = () => undefined;
  const path = '/s/job.photos/01-fuse.png';
  const there = files.exists(path) ? Buffer.compare(files.read(path), png) === 0 : 'nothing';
  return { kept: kept.kind === 'good', there, calls: files.calls.length };
}

test('a disk that refuses any call leaves no photo under its name, or the whole of it', () => {
  const { calls } = afterRefusal(Infinity);

  const tried = Array.from({ length: calls }, (_, index) => afterRefusal(index + 1));

  expect(calls).toBeGreaterThan(5);
  expect(tried.filter(({ kept }) => !kept).length).toBeGreaterThan(5);
  expect(tried.filter(({ kept, there }) => there === false || (kept && there !== true))).toEqual(
    [],
  );
});
