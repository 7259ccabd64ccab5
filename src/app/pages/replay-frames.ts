import { quickAdvice } from '../../core/reason/advice/advise.ts';
import type { Advice } from '../../core/reason/advice/advice.ts';
import {
  chancesNow,
  leaderIn,
  beliefHistory,
  type ChanceMap,
} from '../../core/reason/history/belief-history.ts';
import { inputFrom, leftOut } from '../../core/reason/history/from-story.ts';
import { frameAt, frameStops, type Frame } from '../../core/review/frames.ts';
import { secondsToRead } from '../../core/review/replay-forms.ts';
import { fold } from '../../core/session/fold.ts';
import type { Story } from '../../core/session/story.ts';
import { clockTime, dateOf } from '../../core/session/clock.ts';
import type { Recording, Speed } from '../screen.ts';
import type { OpenSession } from '../state.ts';

/** Seconds a page stays that has no decision on it. */
const bareSeconds = 2;

/** Seconds a decision stays on the screen while it plays: as long as it takes to read, by the speed. */
export const paceAt = (recording: Recording, at: number, speed: Speed): number =>
  (secondsToRead(frameOn(recording, at)) ?? bareSeconds) / speed;

/** Frames that were worked out; what a decision is weighed by takes its time. */
const known = new WeakMap<Recording['events'], Map<number, Frame>>();

/** The decision that had been taken last after so many events; undefined before the first. */
export function frameOn({ header, events, stops }: Recording, at: number): Frame | undefined {
  const stop = stops.findLast((count) => count <= at);
  if (stop === undefined) return undefined;
  const frames = known.get(events) ?? new Map<number, Frame>();
  known.set(events, frames);
  const frame = frames.get(stop) ?? frameAt({ header, events }, stop);
  frames.set(stop, frame);
  return frame;
}

/** Which of the decisions that is, counted from 1; 0 before the first. */
export const decisionNumber = ({ stops }: Recording, at: number): number =>
  stops.filter((count) => count <= at).length;

/** The decision after a place (or before it); the end of the session, or its beginning, where there is none. */
export const stopFrom = ({ stops, events }: Recording, at: number, way: 'on' | 'back'): number =>
  way === 'on'
    ? (stops.find((count) => count > at) ?? events.length)
    : (stops.findLast((count) => count < at) ?? 0);

export function makeRecording(
  path: string,
  header: OpenSession['header'],
  events: OpenSession['events'],
): Recording {
  const stops = frameStops({ header, events });
  return { path, header, events, stops, turning: turningPoints(header, events) };
}

/**
 * How many events had been told each time the likeliest cause changed, as it was known then: a
 * correction counts from where it was made.
 */
function turningPoints(
  header: OpenSession['header'],
  events: OpenSession['events'],
): readonly number[] {
  const turning: number[] = [];
  let leader: string | undefined;
  const lead = (count: number, chances: ChanceMap | undefined): void => {
    const now = chances && leaderIn(chances);
    if (now !== undefined && leader !== undefined && now !== leader) turning.push(count);
    leader = now ?? leader;
  };
  const counts = new Map(events.map(({ n }, index) => [n, index + 1]));
  let since = 0;
  for (const [index, { kind, n }] of events.entries()) {
    const last = index === events.length - 1;
    if (kind !== 'corrected' && !last) continue;
    const before = kind === 'corrected' ? index : index + 1;
    for (const step of beliefHistory(fold(header, events.slice(0, before)), since))
      lead(counts.get(step.n) ?? before, step.after);
    if (kind === 'corrected') lead(index + 1, chancesNow(fold(header, events.slice(0, index + 1))));
    since = n;
  }
  return turning;
}

/** The session as it stood after so many events, in the form that the screens of the walk draw. */
export function sessionAt(
  { path, header, events, damage = [] }: Recording,
  at: number,
): OpenSession {
  const told = events.slice(0, at);
  const story = fold(header, told);
  return {
    path,
    header,
    events: told,
    damage,
    story,
    own: story.due,
    advice: adviceAt(story),
    unadvised: 'nothing explains all that was found.',
    kept: told.at(-1)?.n ?? 0,
    keptAt: clockTime(told.at(-1)?.at ?? header.opened),
    trouble: undefined,
  };
}

function adviceAt(story: Story): Advice | undefined {
  const made = inputFrom(story);
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

/**
 * How many events had been told at a place that was typed: the number of one, or a time (10:42) of
 * the day that is shown. Undefined for what is neither.
 */
export function placeTyped(
  { events, header }: Recording,
  at: number,
  typed: string,
): number | undefined {
  if (/^\d+$/.test(typed)) return Math.min(Number(typed), events.length);
  const [, hour = '', minute = ''] = /^(\d{1,2}):(\d\d)$/.exec(typed) ?? [];
  if (hour === '' || Number(hour) > 23 || Number(minute) > 59) return undefined;
  const day = dateOf(events[Math.max(0, at - 1)]?.at ?? header.opened);
  const until = `${day} ${hour.padStart(2, '0')}:${minute}`;
  const after = events.findIndex(({ at: told }) => `${dateOf(told)} ${clockTime(told)}` > until);
  return after < 0 ? events.length : after;
}
