import { at } from '../at.ts';
import { good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { soundLoop, tapOf } from './flow.ts';
import type { Located } from './located/locate.ts';
import type { Setting } from './path.ts';
import { hopId } from './route.ts';
import type { Routes } from './route.ts';
import type { FeedState } from './settle.ts';

/** What the search of one load's loop should do next. */
export type NextProbe =
  /**
   * These spans are left, one for each fault: by a bad stretch of its own, or because all others are
   * cleared. Several for one fault lie between stations that were all read.
   */
  | { readonly kind: 'found'; readonly spans: readonly string[] }
  /** Every span of the loop is sound: it is the load itself, or it comes and goes. */
  | { readonly kind: 'clear' }
  | ({ readonly kind: 'probe' } & Probe);

/** Where to put the probe, and what it settles. */
type Probe = {
  readonly station: string;
  readonly minutes: number;
  /** Share of the suspicion that lies before the station, as the current goes. */
  readonly before: number;
  /** Expected minutes of probing until one span is left, this probe included. */
  readonly expected: number;
  /** Span ids that are still suspect, as the current goes. */
  readonly suspects: readonly string[];
};

export type ProbeWish = {
  /** The load that does not work; its loop is searched. */
  readonly load: string;
  /** How likely each span is the bad one; those not named have 1, 0 takes one out. */
  readonly weights?: Readonly<Record<string, number>>;
  /** Minutes to get a probe there, opening up included; the station's own unless given. */
  readonly minutes?: (station: string) => number;
};

type ProbePoint = { readonly station: string; readonly minutes: number };
/** Suspect spans that no reading parts, and the cheapest point to read just beyond them. */
type Suspect = {
  readonly spans: readonly string[];
  readonly weight: number;
  /** Nothing where every station that reads the same was read already. */
  readonly end: ProbePoint | undefined;
};

/**
 * The best next station for one bad span in the loop of a load: the cut that makes the expected
 * minutes of the whole search least (the optimal alphabetic search tree, by the usual recurrence
 * over intervals, from memory). With equal minutes this is the half split. The positive post comes
 * first: without it no other reading says anything. Of several faults the worst that is not yet at
 * one span is searched. A station that was read is not proposed again.
 */
export function nextProbe(
  feed: Feed,
  setting: Setting,
  located: Located,
  wish: ProbeWish,
): Parsed<NextProbe> {
  const sound = soundLoop(feed, setting, wish.load);
  if (sound.kind === 'bad') return sound;
  const { state, routes, supply, ground } = sound.value;
  const cost = (id: string): number => wish.minutes?.(id) ?? stationOf(feed, id).minutes;
  const point = pointsOf({ feed, routes, sound: state, located }, cost);
  const hops = [
    ...supply.map((hop) => ({ span: hopId(hop), beyond: hop.outer })),
    ...ground.map((hop) => ({ span: hopId(hop), beyond: hop.inner })),
  ];
  const loop = new Set(hops.map(({ span }) => span));
  const faults = located.faults
    .map((fault) => fault.suspects.filter((span) => loop.has(span)))
    .filter((spans) => spans.length > 0);
  // All of one fault that is still wide; else of each fault its one span.
  const wide = faults.find((spans) => spans.length > 1);
  const weigh = weightsOf(located, wish, wide ?? faults.flat());
  const suspects = parted(
    hops.map(({ span, beyond }) => ({ spans: [span], weight: weigh(span), end: point(beyond) })),
  );
  if (suspects.length === 0) return good({ kind: 'clear' });
  if (suspects.length === 1 || (wide === undefined && faults.length > 0))
    return good({ kind: 'found', spans: suspects.flatMap(({ spans }) => spans) });
  const probe = cheapestCut(suspects);
  if (located.battery !== undefined) return good({ kind: 'probe', ...probe });
  const { positive } = feed.battery;
  const minutes = cost(positive);
  const expected = minutes + probe.expected;
  return good({ kind: 'probe', ...probe, station: positive, minutes, before: 0, expected });
}

/** How suspect each span is after the readings: not at all outside what they leave open. */
function weightsOf(
  located: Located,
  wish: ProbeWish,
  faulty: readonly string[],
): (span: string) => number {
  // A stretch that keeps its volts with no current is not open, which is what a dead load asks.
  const cleared = new Set(
    located.stretches
      .filter(({ verdict }) => verdict === 'sound' || verdict === 'idle')
      .flatMap(({ spans }) => spans),
  );
  const within = new Set(faulty);
  return (span) => {
    if (located.faults.length > 0 ? !within.has(span) : cleared.has(span)) return 0;
    return wish.weights?.[span] ?? 1;
  };
}

/** The suspects in a row, each that cannot be parted from the next by a reading joined to it. */
function parted(spans: readonly Suspect[]): readonly Suspect[] {
  const suspects: Suspect[] = [];
  for (const next of spans.filter(({ weight }) => weight > 0)) {
    const last = suspects.at(-1);
    if (last === undefined || last.end !== undefined) suspects.push(next);
    else
      suspects[suspects.length - 1] = {
        spans: [...last.spans, ...next.spans],
        weight: last.weight + next.weight,
        end: next.end,
      };
  }
  return suspects;
}

function stationOf(feed: Feed, id: string): Feed['stations'][string] {
  const station = feed.stations[id];
  if (station === undefined) throw new Error(`The feed path has no station "${id}".`);
  return station;
}

type Points = {
  readonly feed: Feed;
  readonly routes: Routes;
  readonly sound: FeedState;
  readonly located: Located;
};

/**
 * The cheapest station that reads what this one reads and was not read yet: itself, or the end of an
 * idle branch off it. Nothing once the station itself was read.
 */
function pointsOf({ feed, routes, sound, located }: Points, cost: (id: string) => number) {
  const standIns = Object.keys(feed.stations).filter((id) => routes.has(id));
  return (station: string): ProbePoint | undefined =>
    located.read.has(station)
      ? undefined
      : [station, ...standIns.filter((id) => tapOf(routes, sound, id) === station)]
          .filter((id) => !located.read.has(id))
          .map((id) => ({ station: id, minutes: cost(id) }))
          .reduce((best, one) => (one.minutes < best.minutes ? one : best));
}

type Search = { readonly minutes: number; readonly cut: number };

/** The cut of two or more suspects with the least expected minutes. */
function cheapestCut(suspects: readonly Suspect[]): Probe {
  const count = suspects.length;
  const sums = [0];
  for (const { weight } of suspects) sums.push(at(sums, sums.length - 1) + weight);
  const weightOf = (from: number, to: number): number => at(sums, to) - at(sums, from);
  const best = new Map<string, Search>();
  // One suspect alone needs no more probing.
  const minutesOf = (from: number, to: number): number => best.get(`${from},${to}`)?.minutes ?? 0;
  for (let size = 2; size <= count; size += 1)
    for (let from = 0; from + size <= count; from += 1) {
      const to = from + size;
      let least: Search = { minutes: Infinity, cut: from + 1 };
      for (let cut = from + 1; cut < to; cut += 1) {
        const here = endOf(suspects, cut).minutes * weightOf(from, to);
        const minutes = here + minutesOf(from, cut) + minutesOf(cut, to);
        if (minutes < least.minutes - 1e-12) least = { minutes, cut };
      }
      best.set(`${from},${to}`, least);
    }
  const whole = best.get(`0,${count}`);
  if (whole === undefined) throw new Error(`${count} suspects cannot be parted.`);
  return {
    ...endOf(suspects, whole.cut),
    before: weightOf(0, whole.cut) / weightOf(0, count),
    expected: whole.minutes / weightOf(0, count),
    suspects: suspects.flatMap(({ spans }) => spans),
  };
}

/** Where the last of the first so many suspects is read. */
function endOf(suspects: readonly Suspect[], count: number): ProbePoint {
  const { end } = at(suspects, count - 1);
  if (end === undefined) throw new Error('A suspect that no reading parts was not joined.');
  return end;
}
