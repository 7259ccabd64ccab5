import { byTime, dateOf } from '../session/clock.ts';
import { sum } from '../sum.ts';
import type { Expectations } from './expectations.ts';
import type { Review, Share } from './shape.ts';
import { skillNames, type Skill } from './skills.ts';

/** What is followed over the jobs of one person: the skills, and minutes taken against those planned. */
const measures = [...skillNames, 'minutes'] as const;
export type Measure = (typeof measures)[number];

/** Which way a measure goes over the jobs; `unclear` where their spread is as large as that. */
export type Direction = 'rising' | 'falling' | 'unclear' | 'too few';

/** One measure of one person: job by job added up, and how far the jobs lie apart. */
export type Trend = {
  readonly measure: Measure;
  /** So many done of so many, or minutes taken of minutes planned, by month in their order. */
  readonly months: ReadonlyMap<string, Counted>;
  readonly all: Counted;
  /** Jobs in which it was called for, with the least and the most of them. */
  readonly jobs: number;
  readonly least: number;
  readonly most: number;
  readonly direction: Direction;
};

export type Counted = { readonly part: number; readonly whole: number };

/** How one person worked over several jobs, in their order of time. */
export type Person = {
  readonly who: string;
  readonly jobs: number;
  readonly months: readonly string[];
  readonly trends: readonly Trend[];
  readonly expectations: Expectations;
  readonly guesses: number;
};

/** Fewer jobs than this show no direction, whatever they show. */
export const enoughJobs = 5;

type Job = { readonly opened: string; readonly share: Share };

/** Everybody with two jobs or more; two people on one job are told apart by who worked at each step. */
export function peopleOf(reviews: readonly Review[]): readonly Person[] {
  const real = reviews.filter(({ practice }) => !practice);
  // Practice is counted by itself, and only where nothing else is asked for.
  const jobs = (real.length === 0 ? reviews : real)
    .toSorted((one, other) => byTime(one.opened, other.opened))
    .flatMap(({ opened, people }) => people.map((share): Job => ({ opened, share })));
  const names = [...new Set(jobs.map(({ share }) => share.who))].filter((who) => who !== '');
  return names.flatMap((who) => {
    const mine = jobs.filter(({ share }) => share.who === who && share.steps > 0);
    return mine.length < 2 ? [] : [personOf(who, mine)];
  });
}

const monthOf = (opened: string): string => dateOf(opened).slice(0, 7);

function personOf(who: string, jobs: readonly Job[]): Person {
  return {
    who,
    jobs: jobs.length,
    months: [...new Set(jobs.map(({ opened }) => monthOf(opened)))],
    trends: measures.flatMap((measure) => trendOf(measure, jobs) ?? []),
    expectations: together(jobs.map(({ share }) => share.expectations)),
    guesses: sum(jobs.map(({ share }) => share.guesses)),
  };
}

function countedIn({ skills }: Share, measure: Measure): Counted {
  if (measure === 'minutes') return { part: skills.minutes.taken, whole: skills.minutes.planned };
  const { good, of } = skills[measure satisfies Skill];
  return { part: good, whole: of };
}

const added = (some: readonly Counted[]): Counted => ({
  part: sum(some.map(({ part }) => part)),
  whole: sum(some.map(({ whole }) => whole)),
});

function trendOf(measure: Measure, jobs: readonly Job[]): Trend | undefined {
  const called = jobs
    .map(({ opened, share }) => ({ month: monthOf(opened), counted: countedIn(share, measure) }))
    .filter(({ counted }) => counted.whole > 0);
  if (called.length === 0) return undefined;
  const months = new Map(
    [...new Set(called.map(({ month }) => month))].map((month) => [
      month,
      added(called.filter((one) => one.month === month).map(({ counted }) => counted)),
    ]),
  );
  const shares = called.map(({ counted: { part, whole } }) => part / whole);
  return {
    measure,
    months,
    all: added(called.map(({ counted }) => counted)),
    jobs: called.length,
    least: Math.min(...shares),
    most: Math.max(...shares),
    direction: directionOf(shares),
  };
}

/**
 * Which way values go from job to job: the slope of least squares, told where it is more than twice its
 * standard error (a textbook's rule of thumb for 95 in 100, from memory).
 */
export function directionOf(values: readonly number[]): Direction {
  const count = values.length;
  if (count < enoughJobs) return 'too few';
  const middle = (count - 1) / 2;
  const mean = sum(values) / count;
  const spread = sum(values.map((_, index) => (index - middle) ** 2));
  const slope = sum(values.map((value, index) => (index - middle) * (value - mean))) / spread;
  const rest = sum(values.map((value, index) => (value - mean - slope * (index - middle)) ** 2));
  const error = Math.sqrt(rest / (count - 2) / spread);
  if (Math.abs(slope) < 1e-9 || Math.abs(slope) <= 2 * error) return 'unclear';
  return slope > 0 ? 'rising' : 'falling';
}

function together(all: readonly Expectations[]): Expectations {
  const pair = (of: (one: Expectations) => Expectations['likely']): Expectations['likely'] => ({
    said: sum(all.map((one) => of(one).said)),
    right: sum(all.map((one) => of(one).right)),
  });
  return {
    ...pair((one) => one),
    foreseen: sum(all.map(({ foreseen }) => foreseen)),
    weighed: sum(all.map(({ weighed }) => weighed)),
    likely: pair(({ likely }) => likely),
    unlikely: pair(({ unlikely }) => unlikely),
  };
}
