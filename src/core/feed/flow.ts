import { bad, good } from '../problem.ts';
import { unknown } from './check-feed.ts';
import type { Feed, Load } from '../tree/feed-model.ts';
import { lampAmps } from './lamp.ts';
import { coldShare, isOn, loadOhms, running } from './path.ts';
import type { Setting } from './path.ts';
import { hopId, loopOf, routesOf, wayTo } from './route.ts';
import type { Routes } from './route.ts';
import { solveFeed } from './settle.ts';
import type { FeedState } from './settle.ts';

/** Under this a span is taken as carrying nothing, in amps. */
export const still = 0.01;

export type Flow = {
  readonly sound: FeedState;
  /** Amps outward from the battery post, by span id; on the ground side they are negative. */
  readonly amps: (span: string) => number;
};

/**
 * The loop of a load on a sound vehicle: the way there and back, and what every station and span
 * has. One problem for a load that the feed path has not.
 */
export function soundLoop(feed: Feed, setting: Setting, id: string) {
  const load = feed.loads.find((one) => one.id === id);
  if (load === undefined) return bad(unknown('load', id));
  const routes = routesOf(feed, setting);
  return good({ load, state: solveFeed(feed, setting), routes, ...loopOf(routes, load) });
}

/** Volts read across two stations, the way out from the battery post. */
export type Loss = { readonly inner: string; readonly outer: string; readonly drop: number };

/** What is known of the path: volts by station, and drops of which neither end is known. */
type Read = {
  readonly read: ReadonlyMap<string, number>;
  readonly losses: readonly Loss[];
};

/**
 * What flows in each span, told from the readings: each load takes what the nearest reading on its
 * way says reaches it (the sound value where nothing was read), and a span carries what hangs
 * beyond it. A reading at the end of a branch that carries nothing stands for where it leaves.
 */
export function flowFrom(
  { feed, setting }: { readonly feed: Feed; readonly setting: Setting },
  routes: Routes,
  { read, losses }: Read,
): Flow {
  const sound = solveFeed(feed, setting);
  const known = { sound, losses, read: withTaps(routes, sound, read) };
  const amps = new Map<string, number>();
  const carry = (station: string, outward: number): void => {
    for (const hop of wayTo(routes, station))
      amps.set(hopId(hop), (amps.get(hopId(hop)) ?? 0) + outward);
  };
  const guess = (station: string): number => voltsGuess(routes, known, station);
  for (const load of feed.loads.filter((one) => isOn(one, setting))) {
    const taken = takenBy(load, guess(load.from) - guess(load.to), setting);
    carry(load.from, taken);
    carry(load.to, -taken);
  }
  for (const machine of running(feed, setting)) {
    const given = -sound.amps(machine.id);
    carry(machine.from, -given);
    carry(machine.to, given);
  }
  return { sound, amps: (span) => amps.get(span) ?? 0 };
}

function takenBy(load: Load, across: number, { filaments }: Setting): number {
  if (across <= 0) return 0;
  const ohms = loadOhms(load);
  if (!load.filament || filaments === 'hot') return across / ohms;
  if (filaments === 'cold') return across / (ohms * coldShare);
  if (!('at' in load.takes)) return across / ohms;
  return lampAmps({ ohms, rated: load.takes.at }, across);
}

/** Where the idle branch that a station ends leaves the line that carries current. */
export function tapOf(routes: Routes, sound: FeedState, station: string): string {
  const back = wayTo(routes, station).toReversed();
  const carrying = back.find((hop) => Math.abs(sound.amps(hopId(hop))) > still);
  return carrying?.outer ?? back.at(-1)?.inner ?? station;
}

/** Readings, and what they say of the stations where their idle branches leave. */
function withTaps(
  routes: Routes,
  sound: FeedState,
  read: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
  const taps = [...read].map(([tip, found]) => [tapOf(routes, sound, tip), found] as const);
  return new Map([...taps, ...read]);
}

/**
 * Volts of a station by the nearest reading on its way, less what the drops read beyond that one
 * lose more than a sound stretch.
 */
function voltsGuess(
  routes: Routes,
  { sound, losses, read }: Read & { readonly sound: FeedState },
  station: string,
): number {
  const back = [
    station,
    ...wayTo(routes, station)
      .toReversed()
      .map(({ inner }) => inner),
  ];
  const nearest = back.findIndex((one) => read.has(one));
  const beyond = nearest < 0 ? back : back.slice(0, nearest + 1);
  const lost = losses
    .filter(({ inner, outer }) => beyond.includes(inner) && beyond.includes(outer))
    .reduce((sum, loss) => sum + loss.drop - sound.volts(loss.inner) + sound.volts(loss.outer), 0);
  return Math.max(0, byReading(sound, read, station, back[nearest]) - lost);
}

function byReading(
  sound: FeedState,
  read: ReadonlyMap<string, number>,
  station: string,
  nearest: string | undefined,
): number {
  const usual = sound.volts(station);
  const found = nearest === undefined ? undefined : read.get(nearest);
  if (nearest === undefined || found === undefined) return usual;
  const there = sound.volts(nearest);
  // Near the positive post volts keep their proportion; near the negative post their difference.
  return there > 1 ? (usual * found) / there : Math.max(0, usual + found - there);
}
