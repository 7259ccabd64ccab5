import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { byOwnJobs, countsFor, type Counts } from '../../../src/core/jobs/own-history.ts';
import type { Job } from '../../../src/core/jobs/job.ts';
import { jobOf } from '../../../src/core/jobs/tally.ts';
import { makeModel } from '../../../src/core/reason/belief/model.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { countedSentence, fromYourJobs } from '../../../src/core/tree/counted/words.ts';
import { parseTreeValue } from '../../../src/core/tree/parse.ts';
import { fileOf } from '../../../src/core/tree/written/settle.ts';
import { fitTree } from '../../../src/core/tree/fit.ts';
import { shippedTree, shippedTrees } from '../../helpers/library.ts';
import { readSession } from '../../../src/store/recover.ts';
import { recordText } from '../../helpers/shop-jobs.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallTree } from '../../helpers/tree.ts';

const counts = (causes: Record<string, number>, checks: Counts['checks'] = {}): Counts => ({
  causes,
  checks,
});

/** A whole number of some parts as a pair, so that the closed form is worked out without rounding. */
const fraction = (over: bigint, under: bigint): number =>
  Number((over * 10n ** 18n) / under) / 1e18;

describe('odds', () => {
  test('the worked example: 12 of 100, and 3 of 10 jobs, come to 15.6 of 100', () => {
    const tree = smallTree({ unlisted: 0 });
    const small = { ...tree, causes: { ...tree.causes } };
    // 60 and 40 of 100; 10 jobs, 3 of them the wire: (16 + 3) / 50 and (24 + 7) / 50.
    const moved = byOwnJobs(small, counts({ fuse: 7, wire: 3 }));

    expect(moved.causes['wire']?.odds).toBeCloseTo(38, 12);
    expect(moved.causes['fuse']?.odds).toBeCloseTo(62, 12);
  });

  test('are the mean of the Dirichlet by the closed form, for any counts in any tree', () => {
    const trees = shippedTrees();
    const anyCounts = fc.record({
      tree: fc.constantFrom(...trees),
      seen: fc.array(fc.nat(30), { minLength: 3, maxLength: 40 }),
    });
    fc.assert(
      fc.property(anyCounts, ({ tree, seen }) => {
        const ids = Object.keys(tree.causes);
        const causes = Object.fromEntries(ids.map((id, at) => [id, seen[at % seen.length] ?? 0]));
        const moved = byOwnJobs(tree, counts(causes));

        // In thousandths of the odds, all as whole numbers.
        const whole = (odds: number): bigint => BigInt(Math.round(odds * 1000));
        const all = [...ids.map((id) => tree.causes[id]?.odds ?? 0), tree.unlisted];
        const total = all.reduce((sum, odds) => sum + whole(odds), 0n);
        const n = BigInt(Object.values(causes).reduce((sum, one) => sum + one, 0));
        for (const id of ids) {
          const before = whole(tree.causes[id]?.odds ?? 0);
          const share = fraction(40n * before + total * BigInt(causes[id] ?? 0), total * (40n + n));
          const now = (moved.causes[id]?.odds ?? 0) / (Number(total) / 1000);
          expect(Math.abs(now - share)).toBeLessThan(1e-12);
        }
        const sum = Object.values(moved.causes).reduce((part, { odds }) => part + odds, 0);
        expect(sum + moved.unlisted).toBeCloseTo(Number(total) / 1000, 9);
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  test('of causes that no job was keep their shares to one another, on a vehicle without the others too', () => {
    const tree = shippedTree('no-start');
    const [seen = ''] = Object.keys(tree.causes);
    const moved = byOwnJobs(tree, counts({ [seen]: 12 }));
    const facts = { ignition: 'points', 'fuel-pump': 'mechanical', choke: 'manual' };
    const [before, now] = [fitTree(tree, facts), fitTree(moved, facts)];
    const others = Object.keys(before.causes).filter((id) => id !== seen);
    const ratio = others.map((id) => (now.causes[id]?.odds ?? 0) / (before.causes[id]?.odds ?? 1));

    expect(Math.max(...ratio) - Math.min(...ratio)).toBeLessThan(1e-12);
  });

  test('make priors that still hold the tree to its chance of a second cause', () => {
    const tree = shippedTree('charging');
    const [seen = ''] = Object.keys(tree.causes);
    const moved = byOwnJobs(tree, counts({ [seen]: 20 }));
    const prior = (of: typeof tree) =>
      makeModel(of).causes.find(({ id }) => id === seen)?.prior ?? 0;

    expect(prior(moved)).toBeGreaterThan(prior(tree));
    expect(moved.alsoLikely).toBe(tree.alsoLikely);
  });
});

describe('minutes', () => {
  test.each([
    [1, 13, 3.9], // (10 x 3 + 13) / 11
    [10, 60, 4.5], // (10 x 3 + 60) / 20
    [90, 270, 3],
  ])('measured %d times, %d in all, against 3 in the tree: %d', (times, minutes, expected) => {
    const tree = byOwnJobs(smallTree(), counts({}, { volts: { times, minutes } }));

    expect(tree.checks['volts']?.minutes).toBe(expected);
    expect(tree.checks['look']?.minutes).toBe(1);
  });
});

describe('a tree that was moved', () => {
  const moved = byOwnJobs(
    smallTree(),
    counts({ fuse: 13, wire: 1 }, { look: { times: 2, minutes: 5 } }),
  );

  test('says from how many jobs, and what weighs how much', () => {
    expect(fromYourJobs(moved)).toBe('from your 14 jobs');
    expect(countedSentence(moved)).toBe(
      "Odds from your 14 jobs, the tree's own weighing as 40; minutes of 1 check from your own, the tree's weighing as 10 times each (judgment).",
    );
    expect(fromYourJobs(smallTree())).toBeUndefined();
  });

  test('is never moved twice', () => {
    expect(byOwnJobs(moved, counts({ fuse: 50 }))).toBe(moved);
  });

  test('stands in the record, which folds to the same anywhere', () => {
    const { header, events, story } = after(
      [{ do: 'find', check: 'lamp', result: 'dark' }],
      headerFor(moved),
    );
    const read = readSession(Buffer.from(recordText({ header, events }, header.id)), 'job.jsonl');
    if (read.kind === 'bad') throw new Error(JSON.stringify(read.problems));

    expect(fold(read.value.header, read.value.events)).toEqual(story);
    expect(read.value.header.trees['no-light']?.counted?.jobs).toBe(14);
  });

  test('counts by the odds and minutes as its tree was written', () => {
    const { header, events } = after(
      [
        { do: 'find', check: 'lamp', result: 'dark' },
        { do: 'find', check: 'look', result: 'burnt' },
        { do: 'repair', cause: 'fuse', acknowledged: true },
        { do: 'prove', result: 'lit' },
      ],
      headerFor(moved),
    );

    const job = jobOf('job', { header, events, damage: [] });

    expect(job.complaints[0]?.causes[0]?.share).toBe(60 / 105);
    expect(job.took.find(({ check }) => check === 'look')?.planned).toBe(1);
  });
});

test('counts what was proven in this tree, and nothing of a session that stands apart', () => {
  const job = (causes: readonly string[], tree = 'no-light'): Job => ({
    session: 's',
    opened: '',
    vehicle: '',
    complaints: [
      {
        tree,
        trees: [tree],
        title: '',
        end: 'proven',
        causes: causes.map((cause) => ({ cause, name: '', tree, weight: 1 / causes.length })),
      },
    ],
    took: [{ tree, check: 'look', name: '', planned: 1, minutes: 2 }],
    mended: [],
  });

  expect(
    countsFor(smallTree(), [
      job(['fuse']),
      job(['fuse', 'wire']),
      job(['gone']),
      job(['fuse'], 'other'),
    ]),
  ).toEqual({ causes: { fuse: 1.5, wire: 0.5 }, checks: { look: { times: 3, minutes: 6 } } });
});

test.each(shippedTrees().map((tree) => [tree.id, tree] as const))(
  '%s, moved by jobs of every cause and check, is a tree that a session can carry',
  (id, tree) => {
    const causes = Object.keys(tree.causes).map((cause) => ({
      cause,
      name: '',
      tree: id,
      weight: 1,
    }));
    const took = Object.entries(tree.checks).map(([check, { minutes: planned }]) => ({
      tree: id,
      check,
      name: '',
      planned,
      minutes: planned + 1,
    }));
    const complaint = { tree: id, trees: [id], title: '', end: 'proven' as const, causes };
    const job: Job = { ...none, complaints: [complaint], took };

    const moved = byOwnJobs(tree, countsFor(tree, [job]));

    const read = parseTreeValue(JSON.parse(JSON.stringify(fileOf(moved))), 'moved.json');
    expect(read).toEqual({ kind: 'good', value: moved });
    expect(Object.keys(moved.counted?.checks ?? {})).toEqual(
      Object.keys(tree.checks).filter((check) => Object.hasOwn(fileOf(tree).checks, check)),
    );
  },
);

const none: Job = { session: '', opened: '', vehicle: '', complaints: [], took: [], mended: [] };
