import { good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { soundLoop } from './flow.ts';
import type { FeedReading, Located } from './located/locate.ts';
import type { Stretch } from './located/stretch.ts';
import type { Setting } from './path.ts';
import { hopId } from './route.ts';
import type { Hop } from './route.ts';

/** A span as it is drawn, with the stretch between readings that it belongs to. */
type RungSpan = {
  readonly id: string;
  readonly name: string;
  /** Nothing while no two readings enclose it. */
  readonly stretch: Stretch | undefined;
};

export type Rung = {
  readonly station: string;
  readonly name: string;
  /** A word for a line that holds many stations. */
  readonly short: string;
  readonly side: 'supply' | 'ground';
  /** The span that leads here; the first station and the load's ground end have none. */
  readonly span: RungSpan | undefined;
  readonly found: number | undefined;
  /** What was last read here with other things on; told only where nothing was read with these. */
  readonly otherwise: number | undefined;
  /** What a sound vehicle shows with the same things on. */
  readonly sound: number;
  /** `wrong`: this reading does not fit its neighbour. `next`: the probe goes here now. */
  readonly mark: 'read' | 'wrong' | 'next' | 'unread';
  /** Stations that branch off here. */
  readonly branches: readonly string[];
};

/** The loop of one load in the order of the current, the load between `supply` and `ground`. */
export type Ladder = {
  readonly supply: readonly Rung[];
  readonly load: { readonly id: string; readonly name: string };
  readonly ground: readonly Rung[];
};

export type LadderWish = {
  readonly load: string;
  readonly readings: readonly FeedReading[];
  readonly located: Located;
  /** What was read with other things on, in that order. */
  readonly otherwise?: readonly FeedReading[] | undefined;
  /** Where the probe goes now: at one station, or across two. */
  readonly next?: readonly string[] | undefined;
};

/** The data of the drawing: nothing here is rounded or worded. */
export function ladderOf(feed: Feed, setting: Setting, wish: LadderWish): Parsed<Ladder> {
  const sound = soundLoop(feed, setting, wish.load);
  if (sound.kind === 'bad') return sound;
  const { load, state, routes, supply, ground } = sound.value;
  const line = new Set([...supply, ...ground].flatMap(({ inner, outer }) => [inner, outer]));
  const branchesAt = (station: string): readonly string[] =>
    [...routes.values()]
      .filter(({ inner, outer }) => inner === station && !line.has(outer))
      .map(({ outer }) => outer);
  const rung = (station: string, hop: Hop | undefined): Rung => ({
    station,
    name: feed.stations[station]?.name ?? station,
    short: feed.stations[station]?.short ?? feed.stations[station]?.name ?? station,
    side: feed.stations[station]?.side ?? 'supply',
    span: hop === undefined ? undefined : rungSpan(hop, wish.located),
    found: lastAt(wish.readings, station),
    otherwise:
      lastAt(wish.readings, station) === undefined
        ? lastAt(wish.otherwise ?? [], station)
        : undefined,
    sound: state.volts(station),
    mark: markOf(station, wish),
    branches: branchesAt(station),
  });
  return good({
    supply: [
      rung(supply[0]?.inner ?? load.from, undefined),
      ...supply.map((hop) => rung(hop.outer, hop)),
    ],
    load: { id: load.id, name: load.name },
    ground: [rung(load.to, undefined), ...ground.map((hop) => rung(hop.inner, hop))],
  });
}

const lastAt = (readings: readonly FeedReading[], at: string): number | undefined =>
  readings.findLast(({ station }) => station === at)?.volts;

function rungSpan(hop: Hop, located: Located): RungSpan {
  const id = hopId(hop);
  // The shortest says most of this one span, and what is bad under one load is not sound under another.
  const [stretch] = located.stretches
    .filter(({ spans }) => spans.includes(id))
    .toSorted(
      (one, other) =>
        one.spans.length - other.spans.length || Number(isBad(other)) - Number(isBad(one)),
    );
  return { id, name: hop.span.name, stretch };
}

const isBad = ({ verdict }: Stretch): boolean => verdict === 'bad';

function markOf(station: string, { readings, located, next }: LadderWish): Rung['mark'] {
  if (located.wrong.some(({ from, to }) => from === station || to === station)) return 'wrong';
  if (next?.includes(station) === true) return 'next';
  return readings.some((reading) => reading.station === station) ? 'read' : 'unread';
}
