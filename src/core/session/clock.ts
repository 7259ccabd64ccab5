import { addMilliseconds } from 'date-fns/addMilliseconds';
import { compareAsc } from 'date-fns/compareAsc';
import { differenceInMilliseconds } from 'date-fns/differenceInMilliseconds';
import { isValid } from 'date-fns/isValid';
import { parseISO } from 'date-fns/parseISO';

// The one clock of the core. A time is the text that stands in the record: ISO 8601 wall time with its
// offset. Its offset alone says which moment it is; the zone of the machine is never asked.

/** The offset at the end of a time: `+02:00` or `Z`; empty where it has none. */
export const offsetOf = (time: string): string => /(Z|[+-]\d\d:\d\d)$/.exec(time)?.[1] ?? '';

/** A time with an offset: its own, or else that of another time of the same session. */
export const withOffset = (time: string, like: string): string =>
  offsetOf(time) === '' ? `${time}${offsetOf(like)}` : time;

/** date-fns reads a time without an offset in the machine's zone, so none is ever given to it. */
const momentOf = (time: string) => parseISO(offsetOf(time) === '' ? `${time}Z` : time);

/** Whether a text is a time that there is: 25:10 and the 31st of April are none. */
export const isTime = (text: string): boolean => isValid(momentOf(text));

/** Seconds from one time to another; undefined where one of them is no time. */
export function secondsBetween(from: string, to: string): number | undefined {
  const [start, end] = [momentOf(from), momentOf(to)];
  return isValid(start) && isValid(end) ? differenceInMilliseconds(end, start) / 1000 : undefined;
}

/** Sorts by time, the earliest first, whatever the offsets. */
export const byTime = (one: string, other: string): number =>
  compareAsc(momentOf(one), momentOf(other));

/** The clock time that was on the wall: `10:42`. */
export const clockTime = (at: string): string => at.slice(11, 16);

/** The date that was on the wall: `2026-04-11`. */
export const dateOf = (at: string): string => at.slice(0, 10);

/** A time so many minutes later, with the offset it had. */
export function advanced(time: string, minutes: number): string {
  const offset = offsetOf(time);
  const wall = parseISO(`${time.slice(0, time.length - offset.length)}Z`);
  return `${addMilliseconds(wall, Math.round(minutes * 60_000))
    .toISOString()
    .slice(0, -1)}${offset}`;
}
