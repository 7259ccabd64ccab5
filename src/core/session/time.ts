import { offsetOf, secondsBetween } from './clock.ts';
import type { Stamp } from './kinds/shapes.ts';

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
 * The longest that a person works without a word to the record: a carburetor stripped and built up
 * again has been seen to take less (common practice, no source). What is longer was forgotten open.
 */
const longestWork = 5 * 3600;

/** What the time between two events that follow one another was, in seconds: together they are all of it. */
export type Stretch = {
  readonly worked: number;
  /** The machine slept, or the job had been put down. */
  readonly away: number;
  /** Nobody said what it was: the file was left open over night, or its writer had died. */
  readonly gap: number;
};

export const noTime: Stretch = { worked: 0, away: 0, gap: 0 };

/** All of a stretch, whatever it was, in seconds. */
export const spanOf = ({ worked, away, gap }: Stretch): number => worked + away + gap;

/** Within one opening of the file the machine's uptime counts; from one to the next only the wall clock can tell. */
export function stretchBetween(before: Stamp & { readonly kind?: string }, after: Stamp): Stretch {
  if (before.run !== after.run) {
    const wall = Math.max(0, secondsBetween(before.at, after.at) ?? 0);
    return before.kind === 'paused' ? { ...noTime, away: wall } : { ...noTime, gap: wall };
  }
  const away = sleptSeconds(before, after);
  const awake = Math.max(0, after.up - before.up - away);
  return awake > longestWork ? { ...noTime, away, gap: awake } : { ...noTime, away, worked: awake };
}

/** Seconds worked between two events that follow one another; never negative. */
export const workedSeconds = (before: Stamp, after: Stamp): number =>
  stretchBetween(before, after).worked;

/** The time up to an event: that up to the one before it, and what lies between. */
export function timeAfter(
  { worked, away, gap }: Stretch,
  before: (Stamp & { readonly kind?: string }) | undefined,
  after: Stamp,
): Stretch {
  if (before === undefined) return { worked, away, gap };
  const between = stretchBetween(before, after);
  return { worked: worked + between.worked, away: away + between.away, gap: gap + between.gap };
}

/** Seconds of a whole list of events, by what they were. */
export function stretchOver(events: readonly (Stamp & { readonly kind?: string })[]): Stretch {
  return events.reduce((sum, event, index) => timeAfter(sum, events[index - 1], event), noTime);
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
