import { bad, good } from '../problem.ts';
import { unknown } from './check-feed.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { tapOf } from './flow.ts';
import type { Located } from './locate.ts';
import type { Setting } from './path.ts';
import { loopOf, routesOf, stepId } from './route.ts';
import type { Routes } from './route.ts';
import { solveFeed } from './settle.ts';
import type { FeedState } from './settle.ts';

/** What the search of one load's loop should do next. */
export type NextProbe =
  /** One span is left: by a bad stretch of its own, or because all others are cleared. */
  | { readonly kind: 'found'; readonly span: string }
  /** Every span of the loop is sound: it is the load itself, or it comes and goes. */
  | { readonly kind: 'clear' }
  | ({ readonly kind: 'probe' } & Probe);

/** Where to put the probe, and what it settles. */
export type Probe = {
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

type Place = { readonly station: string; readonly minutes: number };
/** A suspect span and the cheapest place to read just beyond it. */
type Suspect = { readonly span: string; readonly weight: number; readonly end: Place };

/**
 * The best next station for one bad span in the loop of a load: the cut that makes the expected
 * minutes of the whole search least (the optimal alphabetic search tree, by the usual recurrence
 * over intervals, from memory). With equal minutes this is the half split. The positive post comes
 * first: without it no other reading says anything.
 */
export function nextProbe(
  feed: Feed,
  setting: Setting,
  located: Located,
  wish: ProbeWish,
): Parsed<NextProbe> {
  const load = feed.loads.find(({ id }) => id === wish.load);
  if (load === undefined) return bad(unknown('load', wish.load));
  const sound = solveFeed(feed, setting);
  if (sound.kind === 'bad') return sound;
  const routes = routesOf(feed, setting);
  const { supply, ground } = loopOf(routes, load);
  const cost = (id: string): number => wish.minutes?.(id) ?? feed.stations[id]?.minutes ?? 0;
  const place = placesOf({ feed, routes, sound: sound.value }, cost);
  const weigh = weightsOf(located, wish);
  const suspects = [
    ...supply.map((step) => ({ span: stepId(step), end: place(step.outer) })),
    ...ground.map((step) => ({ span: stepId(step), end: place(step.inner) })),
  ]
    .map((suspect): Suspect => ({ ...suspect, weight: weigh(suspect.span) }))
    .filter(({ weight }) => weight > 0);
  const [only] = suspects;
  if (only === undefined) return good({ kind: 'clear' });
  if (suspects.length === 1) return good({ kind: 'found', span: only.span });
  const probe = cheapestCut(suspects);
  if (located.battery !== undefined) return good({ kind: 'probe', ...probe });
  const { positive } = feed.battery;
  const minutes = cost(positive);
  const expected = minutes + probe.expected;
  return good({ kind: 'probe', ...probe, station: positive, minutes, before: 0, expected });
}

/** How suspect each span is after the readings: not at all outside what they leave open. */
function weightsOf(located: Located, wish: ProbeWish): (span: string) => number {
  // A stretch that keeps its volts with no current is not open, which is what a dead load asks.
  const cleared = new Set(
    located.stretches
      .filter(({ verdict }) => verdict === 'sound' || verdict === 'idle')
      .flatMap(({ spans }) => spans),
  );
  const within = new Set(located.suspects);
  return (span) => {
    if (within.size > 0 ? !within.has(span) : cleared.has(span)) return 0;
    return wish.weights?.[span] ?? 1;
  };
}

/** The cheapest station that reads what this one reads: itself, or the end of an idle branch off it. */
function placesOf(
  {
    feed,
    routes,
    sound,
  }: { readonly feed: Feed; readonly routes: Routes; readonly sound: FeedState },
  cost: (id: string) => number,
) {
  const standIns = Object.keys(feed.stations).filter((id) => routes.has(id));
  return (station: string): Place =>
    [station, ...standIns.filter((id) => tapOf(routes, sound, id) === station)]
      .map((id) => ({ station: id, minutes: cost(id) }))
      .reduce((best, one) => (one.minutes < best.minutes ? one : best));
}

type Search = { readonly minutes: number; readonly cut: number };

function cheapestCut(suspects: readonly Suspect[]): Probe {
  const count = suspects.length;
  const sums = suspects.reduce(
    (before, { weight }) => [...before, (before.at(-1) ?? 0) + weight],
    [0],
  );
  const weightOf = (from: number, to: number): number => (sums[to] ?? 0) - (sums[from] ?? 0);
  const best = new Map<string, Search>();
  const minutesOf = (from: number, to: number): number => best.get(`${from},${to}`)?.minutes ?? 0;
  for (let size = 2; size <= count; size += 1)
    for (let from = 0; from + size <= count; from += 1) {
      const to = from + size;
      let least: Search = { minutes: Infinity, cut: from + 1 };
      for (let cut = from + 1; cut < to; cut += 1) {
        const here = (suspects[cut - 1]?.end.minutes ?? 0) * weightOf(from, to);
        const minutes = here + minutesOf(from, cut) + minutesOf(cut, to);
        if (minutes < least.minutes - 1e-12) least = { minutes, cut };
      }
      best.set(`${from},${to}`, least);
    }
  const { minutes, cut } = best.get(`0,${count}`) ?? { minutes: 0, cut: 1 };
  const end = suspects[cut - 1]?.end ?? { station: '', minutes: 0 };
  return {
    ...end,
    before: weightOf(0, cut) / weightOf(0, count),
    expected: minutes / weightOf(0, count),
    suspects: suspects.map(({ span }) => span),
  };
}
