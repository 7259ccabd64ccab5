import type { Stamp } from '../kinds/shapes.ts';
import type { Story, Timer } from '../story.ts';
import { spanOf, stretchBetween } from '../time.ts';

/** A timer of the job with the seconds it has left; under nothing it ran out so long ago. */
export type Running = Timer & { readonly left: number };

/**
 * The timers that were not put away, the shortest first. Time passes for them as it does for a soak: by
 * the machine's uptime while the file is open, asleep or not, and by the wall clock from one opening to
 * the next.
 */
export function timersAt(
  { timers, entries, time, closed }: Pick<Story, 'timers' | 'entries' | 'time' | 'closed'>,
  now: Stamp,
): readonly Running[] {
  const last = entries.at(-1)?.event;
  if (closed !== undefined || last === undefined || timers.length === 0) return [];
  const passed = spanOf(time) + spanOf(stretchBetween(last, now));
  return timers
    .map((timer) => ({ ...timer, left: timer.minutes * 60 - (passed - timer.began) }))
    .toSorted((one, other) => one.left - other.left);
}

const minute = 60;

/** The longest part of a timer's words that stands on a screen. */
const longest = 40;

export const shortLabel = (label: string): string =>
  label.length <= longest ? label : `${label.slice(0, longest - 1).trimEnd()}…`;

/** `soak 12 min left`, `soak: done 3 min ago`. */
export function timerWords({ label: words, left }: Running): string {
  const label = shortLabel(words);
  const whole = Math.abs(left) / minute;
  const about = (minutes: number): string =>
    minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
  if (left > 0) return `${label} ${whole < 1 ? 'under 1 min' : about(Math.ceil(whole))} left`;
  return `${label}: done ${whole < 1 ? 'now' : `${about(Math.floor(whole))} ago`}`;
}
