import { count } from '../../text.ts';
import type { Tree } from '../model.ts';

const jobsOf = (jobs: number): string => count(Math.round(jobs * 10) / 10, 'job');

/** `from your 14 jobs`; undefined for a tree that is as it was written. */
export function fromYourJobs({ counted }: Pick<Tree, 'counted'>): string | undefined {
  if (counted === undefined) return undefined;
  if (counted.jobs > 0) return `from your ${jobsOf(counted.jobs)}`;
  return `minutes from your own checks`;
}

/** The same as a sentence that says what weighs how much. */
export function countedSentence({ counted }: Pick<Tree, 'counted'>): string | undefined {
  if (counted === undefined) return undefined;
  const { jobs, weight, minutesWeight, checks } = counted;
  const measured = Object.keys(checks).length;
  const parts = [
    ...(jobs > 0 ? [`odds from your ${jobsOf(jobs)}, the tree's own weighing as ${weight}`] : []),
    ...(measured > 0
      ? [
          `minutes of ${count(measured, 'check')} from your own, the tree's weighing as ${minutesWeight} times each`,
        ]
      : []),
  ].join('; ');
  return `${parts.slice(0, 1).toUpperCase()}${parts.slice(1)} (judgment).`;
}
