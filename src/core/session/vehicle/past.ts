import type { PayloadOf } from '../event.ts';
import { byUrgency } from '../follow-up.ts';
import { apartName, apartNow } from '../apart/apart.ts';
import { firstLeg, type Story } from '../story.ts';
import type { Vehicle } from './vehicle.ts';

/** A follow-up that nobody has said is done. */
export type LeftToDo = {
  readonly session: string;
  readonly n: number;
  readonly text: string;
  readonly urgency: PayloadOf<'follow-up'>['urgency'];
};

/** A job that was done on a vehicle, as the next one wants to know it. */
export type PastJob = {
  readonly session: string;
  readonly opened: string;
  readonly complaint: string;
  /** How it ended; undefined while it is open. */
  readonly ended: NonNullable<Story['closed']>['as'] | undefined;
  /** What was mended, by the names of the causes. */
  readonly mended: readonly string[];
  readonly left: readonly LeftToDo[];
  /** What was left off or open. */
  readonly apart: readonly string[];
};

/** A job in short, without the follow-ups that were done since. */
export function pastJob(story: Story, { done }: Pick<Vehicle, 'done'>): PastJob {
  const { header, closed, repairs, followUps } = story;
  const tick = (n: number): boolean => done.some((one) => one.session === header.id && one.n === n);
  return {
    session: header.id,
    opened: header.opened,
    complaint: firstLeg(story).tree.title,
    ended: closed?.as,
    mended: repairs.map(({ cause, leg }) => story.legs[leg]?.tree.causes[cause]?.name ?? cause),
    left: followUps
      .filter(({ n }) => !tick(n))
      .map(({ n, text, urgency }) => ({ session: header.id, n, text, urgency })),
    apart: apartNow(story).map((thing) => apartName(story, thing)),
  };
}

/** Everything that past jobs left to do, the most urgent first. */
export const leftToDo = (jobs: readonly PastJob[]): readonly LeftToDo[] =>
  byUrgency(jobs.flatMap(({ left }) => left));
