import type { Feed } from '../../tree/feed-model.ts';
import { flowFrom, tapOf } from '../flow.ts';
import type { Loss } from '../flow.ts';
import type { Setting } from '../path.ts';
import { routesOf, hopId, hopsBetween, wayTo } from '../route.ts';
import type { Routes } from '../route.ts';
import { beyond, stretchOf, type OnPath, type Stretch } from './stretch.ts';

/** Volts at a station to the battery's negative post. */
export type FeedReading = { readonly station: string; readonly volts: number };

/** Volts lost between two stations, read across them: the red lead at `station`. */
export type FeedDrop = {
  readonly station: string;
  readonly against: string;
  readonly volts: number;
};

/** One place that loses too much: bad stretches that share spans are one, others are each their own. */
type LocatedFault = {
  /** The stretch of it that loses most beyond its due. */
  readonly stretch: Stretch;
  /** Spans that lie in every bad stretch of it, or in the worst if none lies in all: one is the place. */
  readonly suspects: readonly string[];
};

export type Located = {
  readonly stretches: readonly Stretch[];
  /** The worst first. */
  readonly faults: readonly LocatedFault[];
  /** Pairs of readings that cannot both be right. */
  readonly wrong: readonly Stretch[];
  /** Stations whose volts are known from a reading. */
  readonly read: ReadonlySet<string>;
  readonly battery:
    | { readonly found: number; readonly sound: number; readonly low: boolean }
    | undefined;
};

/** Judges what lies between readings that were all taken with the same things switched on. */
export function locate(
  feed: Feed,
  setting: Setting,
  readings: readonly FeedReading[],
  drops: readonly FeedDrop[] = [],
): Located {
  const routes = routesOf(feed, setting);
  const { positive, negative } = feed.battery;
  // Last one counts where a station was read twice. The black lead's own station is 0 V.
  const read = new Map([
    [negative, 0],
    ...readings.map(({ station, volts }): [string, number] => [station, volts]),
  ]);
  const losses = drops.flatMap((drop) => lossOf(routes, drop));
  const flow = flowFrom({ feed, setting }, routes, { read, losses });
  const known: Known = { feed, flow, routes, read };
  const judged = [
    ...stretchesOf({ ...known, read: withTaps(known, stretchesOf(known)) }),
    ...losses.map((loss) => stretchOf(known, loss)),
  ];
  const found = read.get(positive);
  return {
    ...sortedOut(judged),
    read: new Set(read.keys()),
    battery: found === undefined ? undefined : batteryAt(feed, found, flow.sound.volts(positive)),
  };
}

/** The faults and the wrong readings among stretches. */
export function sortedOut(
  stretches: readonly Stretch[],
): Pick<Located, 'stretches' | 'faults' | 'wrong'> {
  const bad = stretches
    .filter(({ verdict }) => verdict === 'bad')
    .toSorted((one, other) => other.excess - one.excess);
  return {
    stretches,
    faults: faultsOf(bad),
    wrong: stretches.filter(({ verdict }) => verdict === 'wrong'),
  };
}

/** A drop the way out from the battery post; nothing where no way leads from one end to the other. */
function lossOf(routes: Routes, { station, against, volts }: FeedDrop): readonly Loss[] {
  if (hopsBetween(routes, station, against).length > 0)
    return [{ inner: station, outer: against, drop: volts }];
  if (hopsBetween(routes, against, station).length > 0)
    return [{ inner: against, outer: station, drop: -volts }];
  return [];
}

/** Bad stretches, the worst first, gathered into the places they speak of. */
function faultsOf(bad: readonly Stretch[]): readonly LocatedFault[] {
  const places: [Stretch, ...Stretch[]][] = [];
  for (const stretch of bad) {
    const same = places.find((place) => place.some((other) => overlap(other, stretch)));
    if (same === undefined) places.push([stretch]);
    else same.push(stretch);
  }
  return places.map(([worst, ...others]) => {
    const shared = worst.spans.filter((span) =>
      others.every((other) => other.spans.includes(span)),
    );
    return { stretch: worst, suspects: shared.length > 0 ? shared : worst.spans };
  });
}

const overlap = (one: Stretch, other: Stretch): boolean =>
  one.spans.some((span) => other.spans.includes(span));

/** What lies between each reading and the next one nearer to its battery post. */
function stretchesOf(known: Known): readonly Stretch[] {
  return [...known.read.keys()].flatMap((outer) => {
    const way = wayTo(known.routes, outer);
    const inner = way.findLast((hop) => known.read.has(hop.inner))?.inner;
    if (inner === undefined) return [];
    const drop = voltsAt(known, inner) - voltsAt(known, outer);
    return [stretchOf(known, { inner, outer, drop })];
  });
}

/**
 * A reading at the end of a branch that carries nothing is a reading where the branch leaves, if it
 * is a good one; a dead end may as well be a fault of the branch.
 */
function withTaps(known: Known, stretches: readonly Stretch[]): ReadonlyMap<string, number> {
  const { read, routes, flow } = known;
  const taps = [...read].flatMap(([tip, volts]) => {
    const last = routes.get(tip);
    const own = stretches.find(({ spans }) => last !== undefined && spans.includes(hopId(last)));
    if (own?.verdict !== 'sound' && own?.verdict !== 'idle') return [];
    return [[tapOf(routes, flow.sound, tip), volts] as const];
  });
  return new Map([...taps, ...read]);
}

function batteryAt(feed: Feed, found: number, sound: number): Located['battery'] {
  const doubt = Math.hypot(feed.spread.meter, feed.spread.volts);
  return { found, sound, low: sound - found > beyond * doubt };
}

type Known = OnPath & { readonly read: ReadonlyMap<string, number> };

/** Volts of a station that was read, or that a branch stands for. */
function voltsAt({ read }: Known, station: string): number {
  const volts = read.get(station);
  if (volts === undefined) throw new Error(`Nothing was read at "${station}".`);
  return volts;
}
