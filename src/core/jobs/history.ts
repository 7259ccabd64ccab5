import { sum } from '../sum.ts';
import type { Apart, End, Job, Mended, Took } from './job.ts';

/** A cause that a complaint turned out to be. */
export type CauseCount = {
  readonly cause: string;
  readonly name: string;
  readonly tree: string;
  /** Jobs proven to be it; one that was two things is half a job of each. */
  readonly jobs: number;
  /** Its share of the odds of the newest job's tree. */
  readonly share?: number | undefined;
};

/** What a check took over many jobs. */
export type CheckMinutes = {
  readonly tree: string;
  readonly check: string;
  readonly name: string;
  /** As the tree of the newest job has it. */
  readonly planned: number;
  readonly times: number;
  readonly median: number;
  readonly least: number;
  readonly most: number;
};

/** Repairs of one cause whose proof failed, and the parts that went into them. */
type NoHelp = {
  readonly tree: string;
  readonly cause: string;
  readonly name: string;
  readonly failed: number;
  /** Repairs of it that were put to the proof. */
  readonly tried: number;
  readonly parts: readonly string[];
};

/** One complaint over many jobs. */
export type ComplaintHistory = {
  readonly tree: string;
  readonly title: string;
  readonly proven: number;
  /** The commonest first. */
  readonly causes: readonly CauseCount[];
  /** Jobs without proof, by how they ended, named. */
  readonly notProven: readonly {
    readonly end: Exclude<End, 'proven'>;
    readonly sessions: readonly string[];
  }[];
  readonly checks: readonly CheckMinutes[];
  readonly noHelp: readonly NoHelp[];
};

/** What many sessions come to. */
export type History = {
  readonly sessions: number;
  readonly from: string | undefined;
  readonly to: string | undefined;
  /** The commonest complaint first. */
  readonly complaints: readonly ComplaintHistory[];
  /** Sessions of which nothing counts, by why, named. */
  readonly apart: readonly { readonly why: Apart; readonly sessions: readonly string[] }[];
};

/** What a folder of jobs comes to, of one complaint where its tree's id or words of its title are given. */
export function historyOf(jobs: readonly Job[], about = ''): History {
  const counted = jobs.filter(({ apart }) => apart === undefined);
  const groups = groupsIn(counted, about);
  const opened = counted.map((job) => job.opened).toSorted();
  return {
    sessions: jobs.length,
    from: opened[0],
    to: opened.at(-1),
    complaints: groups
      .map((group) => complaintHistory(group))
      .toSorted((one, other) => other.proven - one.proven || (one.tree < other.tree ? -1 : 1)),
    apart: namedBy(
      jobs.flatMap(({ apart, session }) => (apart === undefined ? [] : [{ by: apart, session }])),
    ).map(({ by: why, sessions }) => ({ why, sessions })),
  };
}

type One = { readonly session: string; readonly complaint: Job['complaints'][number] };
type Group = {
  readonly tree: string;
  readonly title: string;
  readonly ones: readonly One[];
  /** What checks took and what was mended in the trees of the complaint. */
  readonly took: readonly Took[];
  readonly mended: readonly Mended[];
};

/** Complaints without a tree are each their own; the title is the newest job's. */
function groupsIn(jobs: readonly Job[], about: string): readonly Group[] {
  const sought = about.trim().toLowerCase();
  const all = jobs.flatMap((job) => job.complaints.map((complaint) => ({ job, complaint })));
  const byTree = Map.groupBy(all, ({ complaint }) => complaint.tree);
  return [...byTree].flatMap(([tree, found]) => {
    const newest = found.toSorted((a, b) => (a.job.opened < b.job.opened ? 1 : -1))[0];
    const title = newest?.complaint.title ?? tree;
    const fits = tree === sought || title.toLowerCase().includes(sought);
    if (!fits) return [];
    const ones = found.map(({ job, complaint }) => ({ session: job.session, complaint }));
    const within = <T extends { readonly tree: string }>(of: (job: Job) => readonly T[]) =>
      found.flatMap(({ job, complaint }) =>
        of(job).filter((one) => complaint.trees.includes(one.tree)),
      );
    const took = within((job) => job.took);
    return [{ tree, title, ones, took, mended: within((job) => job.mended) }];
  });
}

function complaintHistory({ tree, title, ones, took, mended }: Group): ComplaintHistory {
  const proven = ones.filter(({ complaint }) => complaint.end === 'proven');
  return {
    tree,
    title,
    proven: proven.length,
    causes: causesIn(proven),
    notProven: namedBy(
      ones.flatMap(({ session, complaint: { end } }) =>
        end === 'proven' ? [] : [{ by: end, session }],
      ),
    ).map(({ by: end, sessions }) => ({ end, sessions })),
    checks: minutesIn(took),
    noHelp: noHelpIn(mended),
  };
}

function causesIn(proven: readonly One[]): readonly CauseCount[] {
  const all = proven.flatMap(({ complaint }) => complaint.causes);
  const groups = Map.groupBy(all, ({ tree, cause }) => `${tree} ${cause}`);
  return [...groups.values()]
    .flatMap((same) => {
      const last = same.at(-1);
      if (last === undefined) return [];
      const { weight: _, ...about } = last;
      return [{ ...about, jobs: sum(same.map(({ weight }) => weight)) }];
    })
    .toSorted((one, other) => other.jobs - one.jobs || (one.cause < other.cause ? -1 : 1));
}

function minutesIn(took: readonly Took[]): readonly CheckMinutes[] {
  return [...Map.groupBy(took, ({ tree, check }) => `${tree} ${check}`).values()]
    .flatMap((same): CheckMinutes[] => {
      const minutes = same.map((one) => one.minutes).toSorted((a, b) => a - b);
      const last = same.at(-1);
      if (last === undefined) return [];
      const { tree, check, name, planned } = last;
      const [least = 0, most = 0] = [minutes[0], minutes.at(-1)];
      return [
        { tree, check, name, planned, times: same.length, median: medianOf(minutes), least, most },
      ];
    })
    .toSorted((one, other) => other.times - one.times || (one.check < other.check ? -1 : 1));
}

/** The middle of sorted numbers; of an even count the mean of the two about it. */
export function medianOf(sorted: readonly number[]): number {
  const middle = sorted.length / 2;
  const [low = 0, high = low] = [sorted[Math.ceil(middle) - 1], sorted[Math.floor(middle)]];
  return (low + high) / 2;
}

function noHelpIn(mended: readonly Mended[]): readonly NoHelp[] {
  const tried = mended.filter(({ helped }) => helped !== undefined);
  return [...Map.groupBy(tried, ({ tree, cause }) => `${tree} ${cause}`).values()]
    .flatMap((same): NoHelp[] => {
      const last = same.at(-1);
      const failed = same.filter(({ helped }) => helped === false);
      if (last === undefined || failed.length === 0) return [];
      const { tree, cause, name } = last;
      return [
        {
          tree,
          cause,
          name,
          failed: failed.length,
          tried: same.length,
          parts: failed.flatMap(({ parts }) => parts),
        },
      ];
    })
    .toSorted((one, other) => other.failed - one.failed || (one.cause < other.cause ? -1 : 1));
}

/** Sessions by a word, each word once, in the order in which it came up. */
function namedBy<By extends string>(
  found: readonly { readonly by: By; readonly session: string }[],
): readonly { readonly by: By; readonly sessions: readonly string[] }[] {
  return [...Map.groupBy(found, ({ by }) => by)].map(([by, same]) => ({
    by,
    sessions: [...new Set(same.map(({ session }) => session))],
  }));
}
