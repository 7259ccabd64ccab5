import { mapValues } from '../map-values.ts';
import { sum } from '../sum.ts';
import { varied } from '../tree/counted/counted.ts';
import type { Tree } from '../tree/model.ts';
import { fileOf, settle } from '../tree/written/settle.ts';
import type { Written } from '../tree/written/written.ts';
import type { Job } from './job.ts';
import { totalOdds } from './odds.ts';

/** A tree's odds weigh as much as so many jobs of the owner's (judgment). */
const oddsWeigh = 40;

/** A tree's minutes of a check weigh as much as so many times that it was done (judgment). */
const minutesWeigh = 10;

/** What a person's own jobs say of one tree. */
export type Counts = {
  /** Jobs proven to be each of its causes; two that were mended together are half a job each. */
  readonly causes: Readonly<Record<string, number>>;
  /** How often each of its checks was measured, and the minutes of all. */
  readonly checks: Readonly<Record<string, { readonly times: number; readonly minutes: number }>>;
};

/**
 * What jobs say of a tree; causes and checks that its file has not are left out. Of those that branches
 * stand for, the minutes follow from the file.
 */
export function countsFor(tree: Tree, jobs: readonly Job[]): Counts {
  const file = fileOf(tree);
  const causes: Record<string, number> = {};
  const checks: Record<string, { times: number; minutes: number }> = {};
  for (const { complaints, took } of jobs) {
    for (const { tree: of, cause, weight } of complaints.flatMap((one) => one.causes))
      if (of === tree.id && Object.hasOwn(file.causes, cause))
        causes[cause] = (causes[cause] ?? 0) + weight;
    for (const { tree: of, check, minutes } of took) {
      if (of !== tree.id || !Object.hasOwn(file.checks, check)) continue;
      const { times, minutes: all } = checks[check] ?? { times: 0, minutes: 0 };
      checks[check] = { times: times + 1, minutes: all + minutes };
    }
  }
  return { causes, checks };
}

/**
 * A tree moved gently to a person's own jobs. The shares of its causes are taken as Dirichlet with the
 * tree's odds as `oddsWeigh` jobs; the mean of that after n jobs, of which c were this cause, is
 * (40 · share + c) / (40 + n). On a vehicle that has not all causes the others keep their shares to one
 * another, as the Dirichlet has it. Minutes are the mean of the tree's, as `minutesWeigh` measures, and
 * the measured ones, to a tenth. 12 of 100 and 3 of 10 jobs: (4.8 + 3) / 50 = 15.6 of 100.
 */
export function byOwnJobs(tree: Tree, { causes, checks }: Counts): Tree {
  const jobs = sum(Object.values(causes));
  if (tree.counted !== undefined || (jobs === 0 && Object.keys(checks).length === 0)) return tree;
  const file = fileOf(tree);
  const total = totalOdds(tree);
  const odds = (before: number, count: number): number =>
    (oddsWeigh * before + total * count) / (oddsWeigh + jobs);
  return settle(
    {
      ...file,
      unlisted: odds(file.unlisted, 0),
      causes: mapValues(file.causes, (cause, id) => ({
        ...cause,
        odds: varied(cause.odds, (before) => odds(before, causes[id] ?? 0)),
      })),
      checks: mapValues(file.checks, (check, id) => {
        const took = checks[id];
        if (took === undefined) return check;
        return { ...check, minutes: varied(check.minutes, (before) => shrunken(before, took)) };
      }),
      counted: {
        jobs,
        weight: oddsWeigh,
        odds: mapValues(file.causes, (cause) => cause.odds),
        unlisted: file.unlisted,
        minutesWeight: minutesWeigh,
        checks: mapValues(checks, ({ times }, id) => ({
          times,
          minutes: writtenMinutes(file, id),
        })),
      },
    },
    {},
  );
}

const shrunken = (before: number, { times, minutes }: Counts['checks'][string]): number =>
  Math.round((10 * (minutesWeigh * before + minutes)) / (minutesWeigh + times)) / 10;

const writtenMinutes = ({ checks }: Written, id: string) => checks[id]?.minutes ?? 0;

/** All trees of a library, each moved to the jobs that were walked by it. */
export const treesByOwnJobs = (trees: readonly Tree[], jobs: readonly Job[]): readonly Tree[] =>
  trees.map((tree) => byOwnJobs(tree, countsFor(tree, jobs)));
