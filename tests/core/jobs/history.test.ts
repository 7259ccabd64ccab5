import fc from 'fast-check';
import { expect, test } from 'vitest';
import { historyOf, medianOf } from '../../../src/core/jobs/history.ts';
import { jobApart, type Job } from '../../../src/core/jobs/job.ts';
import { historyLines } from '../../../src/core/jobs/words.ts';

const proven = (session: string, ...causes: readonly string[]): Job => ({
  session,
  opened: `2026-04-${session.padStart(2, '0')}T10:00:00+00:00`,
  vehicle: 'Orchard van',
  complaints: [
    {
      tree: 'no-light',
      trees: ['no-light'],
      title: 'No light',
      end: 'proven',
      causes: causes.map((cause) => ({
        cause,
        name: cause.toUpperCase(),
        tree: 'no-light',
        weight: 1 / causes.length,
        share: 0.25,
      })),
    },
  ],
  took: [],
  mended: causes.map((cause) => ({
    tree: 'no-light',
    cause,
    name: cause.toUpperCase(),
    parts: [],
    helped: true,
  })),
});

const look = (minutes: number) => ({
  tree: 'no-light',
  check: 'look',
  name: 'the fuse',
  planned: 2,
  minutes,
});

test('counts what each complaint turned out to be, the commonest first', () => {
  const jobs = [proven('1', 'wire'), proven('2', 'fuse'), proven('3', 'fuse', 'wire')];

  const [complaint] = historyOf([...jobs, proven('4', 'fuse')]).complaints;

  expect(complaint?.proven).toBe(4);
  expect(complaint?.causes.map(({ cause, jobs: share }) => [cause, share])).toEqual([
    ['fuse', 2.5],
    ['wire', 1.5],
  ]);
});

test('names the sessions of which nothing counts, by why', () => {
  const jobs = [
    proven('1', 'fuse'),
    jobApart('a', 'altered'),
    jobApart('b', 'practice'),
    jobApart('c', 'altered'),
  ];

  expect(historyOf(jobs).apart).toEqual([
    { why: 'altered', sessions: ['a', 'c'] },
    { why: 'practice', sessions: ['b'] },
  ]);
});

test('the sum of the causes is the number of jobs proven, whatever was mended together', () => {
  const anyJobs = fc.array(fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd'), { minLength: 1 }));
  fc.assert(
    fc.property(anyJobs, (all) => {
      const history = historyOf(all.map((causes, index) => proven(String(index), ...causes)));
      const [one] = history.complaints;
      const jobs = (one?.causes ?? []).reduce((sum, cause) => sum + cause.jobs, 0);

      expect(jobs).toBeCloseTo(all.length, 9);
    }),
    { seed: 21 },
  );
});

test('a page for the owner: causes, what did not help, minutes', () => {
  const failed = { ...proven('5', 'wire'), took: [look(3), look(5)] };
  const bulb = { tree: 'no-light', cause: 'bulb', name: 'BULB', parts: ['bulb'], helped: false };
  const jobs = [proven('1', 'fuse'), { ...failed, mended: [bulb, bulb, ...failed.mended] }];

  expect(historyLines(historyOf([...jobs, jobApart('x', 'torn')]))).toEqual([
    '3 sessions, 2026-04-01 to 2026-04-05.',
    'Not counted: 1 torn (x).',
    '',
    'No light (no-light): 2 jobs proven',
    '     1  50 % (tree 25 %)  FUSE',
    '     1  50 % (tree 25 %)  WIRE',
    '  Did not help:',
    '    2 of 2 tried: BULB; fitted: 2 x bulb',
    '  Minutes: took (least to most), the tree says, times',
    '     4 (3 to 5)          2    2x  the fuse',
  ]);
});

test('of several complaints the commonest causes, and how many there are besides', () => {
  const causes = ['a', 'b', 'c', 'd', 'e'].map((cause, at) => proven(String(at), cause));
  const open = proven('7').complaints.map((one) => ({ ...one, end: 'open' as const }));
  const jobs = [
    ...causes,
    proven('5', 'a', 'b'),
    { ...proven('7'), complaints: [...open, ...open.map((one) => ({ ...one, tree: 'own-x' }))] },
  ];

  expect(historyLines(historyOf(jobs))).toEqual([
    '7 sessions, 2026-04-00 to 2026-04-07.',
    '',
    'No light (no-light): 6 jobs proven, 1 not',
    '   1.5  25 % (tree 25 %)  A',
    '   1.5  25 % (tree 25 %)  B',
    '     1  17 % (tree 25 %)  C',
    '     2  2 other things',
    '',
    'No light (no tree): never proven, 1 not',
    '',
    'Parts of a job: several things were mended before one proof, and share it.',
    '',
    '"droplight history TREE" tells of one the minutes, and what did not help.',
  ]);
});

test.each([
  ['no-light', 1],
  ['no LIGHT', 1],
  ['brakes', 0],
])('"%s" finds complaints by tree or title: %d', (about, found) => {
  expect(historyOf([proven('1', 'fuse')], about).complaints).toHaveLength(found);
});

test.each([
  [[], 0],
  [[7], 7],
  [[1, 3], 2],
  [[1, 2, 10], 2],
])('the middle of %j is %d', (numbers, middle) => {
  expect(medianOf(numbers)).toBe(middle);
});
