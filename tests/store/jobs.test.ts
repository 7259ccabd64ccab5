import { expect, test } from 'vitest';
import { indexFile, loadJobs } from '../../src/store/jobs.ts';
import type { Action } from '../../src/core/session/action.ts';
import { failFrom, MemoryFiles } from '../helpers/memory-files.ts';
import { sessionLines } from '../helpers/session-file.ts';
import { headerFor } from '../helpers/story.ts';

const folder = '/sessions';
const index = `${folder}/${indexFile}`;
const fixed: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'repair', cause: 'fuse', acknowledged: true },
  { do: 'prove', result: 'lit' },
];
const whole = sessionLines(fixed).join('');
const another = sessionLines(fixed, { ...headerFor(), who: 'MK' }).join('');

const files = (more: Readonly<Record<string, string>> = {}) =>
  new MemoryFiles({ [`${folder}/a.jsonl`]: whole, [`${folder}/b.jsonl`]: another, ...more });

const apart = (disk: MemoryFiles) =>
  loadJobs(disk, folder).jobs.map((job) => [job.session, job.apart ?? 'counted']);

test('the index serves for files that are as they were', () => {
  const disk = files();

  const first = loadJobs(disk, folder);
  const second = loadJobs(disk, folder);

  expect([first.read, second.read]).toEqual([2, 0]);
  expect(second.jobs).toEqual(first.jobs);
});

test('only a file that was changed is read anew', () => {
  const disk = files();
  loadJobs(disk, folder);
  disk.write(disk.openAppend(`${folder}/b.jsonl`), Buffer.from('\n'));

  expect(loadJobs(disk, folder).read).toBe(1);
});

test('a session that is gone is gone from the index too', () => {
  const disk = files();
  loadJobs(disk, folder);
  disk.remove(`${folder}/b.jsonl`);

  expect(loadJobs(disk, folder).jobs.map(({ session }) => session)).toEqual(['a']);
  expect(disk.text(index)).not.toContain('b.jsonl');
});

test('afresh: every session is read, whatever the index holds', () => {
  const disk = files();
  loadJobs(disk, folder);

  expect(loadJobs(disk, folder, { afresh: true }).read).toBe(2);
});

test.each([
  ['a count of it was changed', (text: string) => text.replace('"weight":1', '"weight":9')],
  ['its last line was torn', (text: string) => text.slice(0, -40)],
  ['it is no index', () => 'hello\n'],
  ['it is empty', () => ''],
  ['other rules made it', (text: string) => text.replace('"rules":1', '"rules":0')],
])('an index is made anew where %s', (_, spoil) => {
  const clean = files();
  const { jobs } = loadJobs(clean, folder);
  const disk = files({ [index]: spoil(clean.text(index)) });

  expect(loadJobs(disk, folder)).toEqual({ jobs, read: 2, unread: 0 });
  expect(disk.text(index)).toBe(clean.text(index));
});

test('what is no whole session of ours is named and counts for nothing', () => {
  const disk = files({
    [`${folder}/c.jsonl`]: whole.replace('"kind":"repaired"', '"kind":"repAired"'),
    [`${folder}/d.jsonl`]: 'not a session\n',
    [`${folder}/e.jsonl`]: '{"format":9,"id":"e"}\n',
    [`${folder}/f.jsonl`]: whole.slice(0, -20),
    [`${folder}/g.jsonl`]: whole.replace('"who":"JB"', '"who":"XX"'),
  });

  expect(apart(disk)).toEqual([
    ['a', 'counted'],
    ['b', 'counted'],
    ['c', 'altered'],
    ['d', 'unreadable'],
    ['e', 'made by a newer version'],
    ['f', 'torn'],
    ['g', 'altered'],
  ]);
});

test('whatever call the disk refuses, there is an answer, and the next index is whole', () => {
  const clean = files();
  const { jobs } = loadJobs(clean, folder);
  const calls = clean.calls.length;

  for (let call = 1; call <= calls; call += 1) {
    const disk = files();
    disk.refuse = failFrom(call, 'EIO');
    const answer = loadJobs(disk, folder);
    disk.refuse = () => undefined;

    expect(answer.jobs).toHaveLength(2);
    expect(loadJobs(disk, folder).jobs).toEqual(jobs);
    expect(disk.text(index)).toBe(clean.text(index));
    expect(disk.openHandles).toBe(0);
  }
});

test('where more would have to be read than is asked for, nothing is', () => {
  const disk = files();

  expect(loadJobs(disk, folder, { most: 1 })).toEqual({ jobs: [], read: 0, unread: 2 });
  expect(disk.exists(index)).toBe(false);
});
