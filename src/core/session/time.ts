import { parseISO } from 'date-fns/parseISO';
import type { Stamp } from './event.ts';

/** Something odd about the clock between two events, told so that times can be trusted. */
export type ClockOddity =
  | { readonly kind: 'slept'; readonly after: number; readonly seconds: number }
  | { readonly kind: 'clock-changed'; readonly after: number; readonly seconds: number }
  | { readonly kind: 'zone-changed'; readonly after: number };

type Numbered = Stamp & { readonly n: number };

/** Differences below this are rounding and scheduling, not events. Seconds. */
const noise = 2;

/** Seconds of wall time between two ISO times. */
const wallSeconds = (from: string, to: string): number =>
  (parseISO(to).getTime() - parseISO(from).getTime()) / 1000;

const zoneOf = (at: string): string => /(Z|[+-]\d\d:\d\d)$/.exec(at)?.[1] ?? '';

/** Seconds the machine slept between two events of one run: uptime goes on, the run's clock does not. */
function sleptSeconds(before: Stamp, after: Stamp): number {
  const slept = after.up - before.up - (after.mono - before.mono) / 1000;
  return slept > noise ? slept : 0;
}

/**
 * Seconds worked between two events that follow one another: from the machine's uptime, without
 * sleep; 0 across a closing and opening of the file. Never negative.
 */
export function workedSeconds(before: Stamp, after: Stamp): number {
  if (before.run !== after.run) return 0;
  return Math.max(0, after.up - before.up - sleptSeconds(before, after));
}

/** Minutes worked over the whole list of events. */
export function workedMinutes(events: readonly Stamp[]): number {
  let seconds = 0;
  events.forEach((event, index) => {
    const before = events[index - 1];
    if (before !== undefined) seconds += workedSeconds(before, event);
  });
  return seconds / 60;
}

/** Sleep, clock jumps and changes of zone between events of one run. */
export function clockOddities(events: readonly Numbered[]): readonly ClockOddity[] {
  return events.flatMap((event, index): ClockOddity[] => {
    const before = events[index - 1];
    if (before === undefined || before.run !== event.run) return [];
    const slept = sleptSeconds(before, event);
    const jumped = wallSeconds(before.at, event.at) - (event.up - before.up);
    return [
      ...(slept > 0 ? [{ kind: 'slept' as const, after: before.n, seconds: slept }] : []),
      ...(Math.abs(jumped) > noise
        ? [{ kind: 'clock-changed' as const, after: before.n, seconds: jumped }]
        : []),
      ...(zoneOf(before.at) !== zoneOf(event.at)
        ? [{ kind: 'zone-changed' as const, after: before.n }]
        : []),
    ];
  });
}

/** The clock time that was on the wall: `10:42`. */
export const clockTime = (at: string): string => at.slice(11, 16);

/** The date that was on the wall: `2026-04-11`. */
export const dateOf = (at: string): string => at.slice(0, 10);
