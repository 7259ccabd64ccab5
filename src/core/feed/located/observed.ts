import type { CheckFeed, Feed } from '../../tree/feed-model.ts';
import type { Tree } from '../../tree/model.ts';
import { at } from '../../at.ts';
import { locate, sortedOut } from './locate.ts';
import type { FeedDrop, FeedReading, Located } from './locate.ts';
import type { Setting } from '../path.ts';

/** A reading taken on the feed path by a check: volts, the black lead where the check says. */
export type Observed = { readonly feed: CheckFeed; readonly volts: number };

/** Readings that belong together, since they were taken with the same things switched on. */
export type ObservedTogether = {
  readonly setting: Setting;
  readonly readings: readonly FeedReading[];
  /** Drops between two stations of which neither is known to the battery's negative post. */
  readonly drops: readonly FeedDrop[];
};

const loadsOf = ({ load }: CheckFeed): string => load.toSorted().join(' ');

/**
 * The readings gathered by what was switched on, told to the battery's negative post: those under the
 * loads of the last reading stand last. What was read under other loads stays known beside them.
 */
export function observedByLoads(
  feed: Feed,
  observed: readonly Observed[],
): readonly ObservedTogether[] {
  const volts = observed.filter((one) => one.feed.reads === 'volts');
  const groups = Map.groupBy(volts.toReversed(), (one) => loadsOf(one.feed));
  return [...groups.values()].toReversed().map((group) => together(feed, group.toReversed()));
}

/**
 * Readings under the same loads. A drop between two stations gives the one that is not known where
 * the other is; else it stands by itself.
 */
function together(feed: Feed, observed: readonly Observed[]): ObservedTogether {
  const { negative } = feed.battery;
  const known = new Map<string, number>([[negative, 0]]);
  // Each pass may make a station known that the next one needs.
  for (let pass = 0; pass <= observed.length; pass += 1)
    for (const one of observed) place(known, negative, one);
  known.delete(negative);
  return {
    setting: { on: at(observed, 0).feed.load },
    readings: [...known].map(([station, value]) => ({ station, volts: value })),
    drops: observed.flatMap(({ feed: { station, against }, volts: drop }) =>
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
 * What all the readings say, each judged with its own things on: what was lost under one load is
 * known under the next as well, and the posts read at rest need not be read again to go on.
 */
export function locateAll(feed: Feed, groups: readonly ObservedTogether[]): Located {
  const each = groups.map(({ setting, readings, drops }) => locate(feed, setting, readings, drops));
  return {
    ...sortedOut(each.flatMap(({ stretches }) => stretches)),
    read: each.at(-1)?.read ?? new Set([feed.battery.negative]),
    battery: each.findLast(({ battery }) => battery !== undefined)?.battery,
  };
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
