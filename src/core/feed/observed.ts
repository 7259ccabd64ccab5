import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import type { FeedReading } from './locate.ts';
import type { Setting } from './path.ts';

/** A reading taken on the feed path by a check: volts, the black lead where the check says. */
export type Sight = { readonly feed: CheckFeed; readonly volts: number };

/** Readings that belong together, since they were taken with the same things switched on. */
export type Sighted = { readonly setting: Setting; readonly readings: readonly FeedReading[] };

const sameLoads = (one: CheckFeed, other: CheckFeed): boolean =>
  one.load.toSorted().join(' ') === other.load.toSorted().join(' ');

/**
 * The readings under the loads of the last one, told to the battery's negative post. A drop between
 * two stations counts where one of the two is known: it gives the other.
 */
export function sightedWith(feed: Feed, sights: readonly Sight[]): Sighted | undefined {
  const volts = sights.filter((sight) => sight.feed.reads === 'volts');
  const last = volts.at(-1);
  if (last === undefined) return undefined;
  const together = volts.filter((sight) => sameLoads(sight.feed, last.feed));
  const known = new Map<string, number>([[feed.battery.negative, 0]]);
  // Each pass may make a station known that the next one needs.
  for (let pass = 0; pass <= together.length; pass += 1)
    for (const sight of together) place(known, feed.battery.negative, sight);
  known.delete(feed.battery.negative);
  return {
    setting: { on: last.feed.load },
    readings: [...known].map(([station, value]) => ({ station, volts: value })),
  };
}

function place(known: Map<string, number>, negative: string, { feed, volts }: Sight): void {
  const black = known.get(feed.against ?? negative);
  const red = known.get(feed.station);
  if (black !== undefined) known.set(feed.station, black + volts);
  else if (red !== undefined && feed.against !== undefined) known.set(feed.against, red - volts);
}
