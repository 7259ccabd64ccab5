import { isPractice } from '../../core/session/header/is-practice.ts';
import { workedSeconds } from '../../core/session/time.ts';
import type { OpenSession, State } from '../state.ts';

/** Minutes worked by now: the last stretch is open still, where the job is. */
export function workedNow({ story, events }: OpenSession, now: State['now']): number {
  if (isPractice(story.header)) return story.minutes;
  const last = events.at(-1);
  const since = last === undefined || story.closed !== undefined ? 0 : workedSeconds(last, now);
  return story.minutes + since / 60;
}
