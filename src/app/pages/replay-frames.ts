import { quickAdvice, type Advice } from '../../core/reason/advice/advise.ts';
import { believe } from '../../core/reason/belief/posterior.ts';
import { caseFrom, leftOut } from '../../core/reason/history/from-story.ts';
import { fold } from '../../core/session/fold.ts';
import type { Story } from '../../core/session/story.ts';
import { clockTime } from '../../core/session/clock.ts';
import type { Recording, Speed } from '../screen.ts';
import type { OpenSession } from '../state.ts';

/** Milliseconds an event stays on the screen while it plays. */
export const pace = (speed: Speed): number => 2000 / speed;

export function makeRecording(
  path: string,
  header: OpenSession['header'],
  events: OpenSession['events'],
): Recording {
  const turning: number[] = [];
  let leader: string | undefined;
  events.forEach((event, index) => {
    if (!['found', 'proved', 'repaired', 'corrected'].includes(event.kind)) return;
    const now = leaderOf(fold(header, events.slice(0, index + 1)));
    if (now !== undefined && leader !== undefined && now !== leader) turning.push(index + 1);
    leader = now ?? leader;
  });
  return { path, header, events, turning };
}

/** The likeliest cause, or `unlisted`; undefined when the findings contradict one another. */
function leaderOf(story: Story): string | undefined {
  const made = caseFrom(story);
  const belief = made.kind === 'good' ? believe(made.value) : made;
  if (made.kind === 'bad' || belief.kind === 'bad') return undefined;
  const { chances } = belief.value;
  const most = Math.max(...chances);
  return most <= 0 ? undefined : made.value.model.causes[chances.indexOf(most)]?.id;
}

/** The session as it stood after so many events, in the form that the screens of the walk draw. */
export function sessionAt({ path, header, events }: Recording, at: number): OpenSession {
  const told = events.slice(0, at);
  const story = fold(header, told);
  return {
    path,
    header,
    events: told,
    story,
    own: story.due,
    advice: adviceAt(story),
    kept: told.at(-1)?.n ?? 0,
    keptAt: clockTime(told.at(-1)?.at ?? header.opened),
    trouble: undefined,
  };
}

function adviceAt(story: Story): Advice | undefined {
  const made = caseFrom(story);
  if (made.kind === 'bad') return undefined;
  const advice = quickAdvice(made.value, { leaveOut: leftOut(story) });
  return advice.kind === 'good' ? advice.value : undefined;
}

/** The next turning point after (or before) a place; the end of the session if there is none. */
export function turningFrom(recording: Recording, at: number, way: 'on' | 'back'): number {
  return way === 'on'
    ? (recording.turning.find((count) => count > at) ?? recording.events.length)
    : (recording.turning.findLast((count) => count < at) ?? 0);
}
