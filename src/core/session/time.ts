import { offsetOf, secondsBetween } from './clock.ts';
import type { Stamp } from './event.ts';

/** Something odd about the clock between two events, told so that times can be trusted. */
export type ClockOddity =
  | { readonly kind: 'slept'; readonly after: number; readonly seconds: number }
  | { readonly kind: 'clock-changed'; readonly after: number; readonly seconds: number }
  | { readonly kind: 'zone-changed'; readonly after: number };

type Numbered = Stamp & { readonly n: number };

/** Differences below this are rounding and scheduling, not events. Seconds. */
const noise = 2;

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

/** Sleep and clock jumps between events of one run, and changes of zone between any. */
export function clockOddities(events: readonly Numbered[]): readonly ClockOddity[] {
  return events.flatMap((event, index): ClockOddity[] => {
    const before = events[index - 1];
    if (before === undefined) return [];
    const zone = { kind: 'zone-changed' as const, after: before.n };
    const moved = offsetOf(before.at) === offsetOf(event.at) ? [] : [zone];
    if (before.run !== event.run) return moved;
    const slept = sleptSeconds(before, event);
    const worked = event.up - before.up;
    // A time that cannot be read says nothing of the clock.
    const jumped = (secondsBetween(before.at, event.at) ?? worked) - worked;
    return [
      ...(slept > 0 ? [{ kind: 'slept' as const, after: before.n, seconds: slept }] : []),
      ...(Math.abs(jumped) > noise
        ? [{ kind: 'clock-changed' as const, after: before.n, seconds: jumped }]
        : []),
      ...moved,
    ];
  });
}
