import { urgencyWords } from '../follow-up.ts';
import { leftToDo, type LeftToDo, type PastJob } from './past.ts';

/** `2026-04-11: Key turned: nothing at all. Fixed. Mended: fuse link.` */
export function jobWords({ opened, complaint, ended, mended, apart }: PastJob): string {
  const how = ended === undefined ? 'Still open' : `Ended: ${ended.replaceAll('-', ' ')}`;
  return [
    `${opened.slice(0, 10)}: ${complaint.replace(/[.!?]+$/, '')}. ${how}.`,
    ...(mended.length === 0 ? [] : [`Mended: ${mended.join(', ')}.`]),
    ...(apart.length === 0 ? [] : [`Left open or off: ${apart.join(', ')}.`]),
  ].join(' ');
}

/** `Before it is driven: brake hose cracked`. */
export const leftWords = ({ urgency, text }: LeftToDo): string =>
  `${urgencyWords[urgency]}: ${text}`;

/** What a new job should know of the ones before it: what was left to do, then the jobs, newest first. */
export const pastLines = (jobs: readonly PastJob[]): readonly string[] => [
  ...leftToDo(jobs).map(leftWords),
  ...jobs.map(jobWords),
];
