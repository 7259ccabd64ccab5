import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import type { Tree } from '../tree/model.ts';
import { at } from '../at.ts';
import type { FeedDrop, FeedReading } from './locate.ts';
import type { Setting } from './path.ts';

/** A reading taken on the feed path by a check: volts, the black lead where the check says. */
export type Observed = { readonly feed: CheckFeed; readonly volts: number };

/** Readings that belong together, since they were taken with the same things switched on. */
export type ObservedTogether = {
  readonly setting: Setting;
  readonly readings: readonly FeedReading[];
  /** Drops between two stations of which neither is known to the battery's negative post. */
  readonly drops: readonly FeedDrop[];
};

const sameLoads = (one: CheckFeed, other: CheckFeed): boolean =>
  one.load.toSorted().join(' ') === other.load.toSorted().join(' ');

/**
 * The readings under the loads of the last one, told to the battery's negative post. A drop between
 * two stations gives the one that is not known where the other is; else it stands by itself.
 */
export function observedTogether(
  feed: Feed,
  observed: readonly Observed[],
): ObservedTogether | undefined {
  const volts = observed.filter((one) => one.feed.reads === 'volts');
  const last = volts.at(-1);
  if (last === undefined) return undefined;
  const together = volts.filter((one) => sameLoads(one.feed, last.feed));
  const { negative } = feed.battery;
  const known = new Map<string, number>([[negative, 0]]);
  // Each pass may make a station known that the next one needs.
  for (let pass = 0; pass <= together.length; pass += 1)
    for (const one of together) place(known, negative, one);
  known.delete(negative);
  return {
    setting: { on: last.feed.load },
    readings: [...known].map(([station, value]) => ({ station, volts: value })),
    drops: together.flatMap(({ feed: { station, against }, volts: drop }) =>
      against === undefined || against === negative || known.has(station)
        ? []
        : [{ station, against, volts: drop }],
    ),
  };
}

function place(known: Map<string, number>, negative: string, { feed, volts }: Observed): void {
  const black = known.get(feed.against ?? negative);
  const red = known.get(feed.station);
  if (black !== undefined) known.set(feed.station, black + volts);
  else if (red !== undefined && feed.against !== undefined) known.set(feed.against, red - volts);
}

/**
 * What is switched on while the complaint shows: as the feed block says, else as the first check
 * that reads the path under a load has it.
 */
export function complaintLoads(tree: Tree, feed: Feed): readonly string[] {
  if (feed.on !== undefined) return feed.on;
  const checks = Object.values(tree.checks).flatMap((check) => check.feed ?? []);
  return checks.find(({ load }) => load.length > 0)?.load ?? [at(feed.loads, 0).id];
}
