import { bad, good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { still } from './flow.ts';
import type { Located } from './locate.ts';
import { isOn } from './path.ts';
import type { Setting } from './path.ts';
import { loopOf, routesOf, stepId, wayTo } from './route.ts';
import type { Routes } from './route.ts';
import { solveFeed } from './settle.ts';
import type { FeedState } from './settle.ts';

/** Where to put the probe next, and what it settles. */
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
 * minutes of the whole search least (the optimal alphabetic search tree, by Knuth's recurrence,
 * from memory). With equal minutes this is the half split. Nothing when one span is left.
 */
export function bestProbe(
  feed: Feed,
  setting: Setting,
  located: Located,
  wish: ProbeWish,
): Parsed<Probe | undefined> {
  const load = feed.loads.find(({ id }) => id === wish.load);
  if (load === undefined)
    return bad({
      code: 'feed-unknown',
      message: `The feed path has no load “${wish.load}”.`,
      mend: 'Name one of its loads.',
      value: wish.load,
    });
  const sound = solveFeed(feed, setting);
  if (sound.kind === 'bad') return sound;
  const routes = routesOf(feed, setting);
  const { supply, ground } = loopOf(routes, load);
  // A stretch that keeps its volts with no current is not open, which is what a dead load asks.
  const cleared = new Set(
    located.stretches
      .filter(({ verdict }) => verdict === 'sound' || verdict === 'idle')
      .flatMap(({ spans }) => spans),
  );
  const within = located.bad === undefined ? undefined : new Set(located.bad.spans);
  const weigh = (span: string): number => {
    if (within === undefined ? cleared.has(span) : !within.has(span)) return 0;
    return wish.weights?.[span] ?? 1;
  };
  const place = placesOf({ feed, routes, sound: sound.value, setting }, wish);
  const suspects = [
    ...supply.map((step) => ({ span: stepId(step), end: place(step.outer) })),
    ...ground.map((step) => ({ span: stepId(step), end: place(step.inner) })),
  ]
    .map((suspect): Suspect => ({ ...suspect, weight: weigh(suspect.span) }))
    .filter(({ weight }) => weight > 0);
  return good(cheapestCut(suspects));
}

type Ground = {
  readonly feed: Feed;
  readonly routes: Routes;
  readonly sound: FeedState;
  readonly setting: Setting;
};

/** The cheapest station that reads what this one reads: itself, or the end of an idle branch off it. */
function placesOf({ feed, routes, sound, setting }: Ground, wish: ProbeWish) {
  const cost = (id: string): number => wish.minutes?.(id) ?? feed.stations[id]?.minutes ?? 0;
  const loaded = new Set(
    feed.loads.filter((load) => isOn(load, setting)).flatMap(({ from, to }) => [from, to]),
  );
  const sameAs = (id: string): string => {
    const idle = wayTo(routes, id).toReversed();
    const stop = idle.find((step) => Math.abs(sound.amps(stepId(step))) > still);
    return stop?.outer ?? idle.at(-1)?.inner ?? id;
  };
  const standIns = Object.keys(feed.stations).filter((id) => !loaded.has(id));
  return (station: string): Place =>
    [station, ...standIns.filter((id) => sameAs(id) === station)]
      .map((id) => ({ station: id, minutes: cost(id) }))
      .reduce((best, one) => (one.minutes < best.minutes ? one : best));
}

type Search = { readonly minutes: number; readonly cut: number };

function cheapestCut(suspects: readonly Suspect[]): Probe | undefined {
  const count = suspects.length;
  if (count < 2) return undefined;
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
