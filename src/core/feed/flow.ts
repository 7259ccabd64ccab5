import type { Parsed } from '../problem.ts';
import { good } from '../problem.ts';
import type { Feed, Load } from '../tree/feed-model.ts';
import { lampAmps } from './lamp.ts';
import { coldShare, isOn, loadOhms, running } from './path.ts';
import type { Setting } from './path.ts';
import { stepId, wayTo } from './route.ts';
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
 * What flows in each span, told from the readings: each load takes what the nearest reading on its
 * way says reaches it (the sound value where nothing was read), and a span carries what hangs
 * beyond it. A reading at the end of a branch that carries nothing stands for where it leaves.
 */
export function flowFrom(
  { feed, setting }: { readonly feed: Feed; readonly setting: Setting },
  routes: Routes,
  read: ReadonlyMap<string, number>,
): Parsed<Flow> {
  const solved = solveFeed(feed, setting);
  if (solved.kind === 'bad') return solved;
  const sound = solved.value;
  const volts = withTaps(routes, sound, read);
  const amps = new Map<string, number>();
  const carry = (station: string, outward: number): void => {
    for (const step of wayTo(routes, station))
      amps.set(stepId(step), (amps.get(stepId(step)) ?? 0) + outward);
  };
  const guess = (station: string): number => voltsGuess(routes, sound, volts, station);
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
  return good({ sound, amps: (span) => amps.get(span) ?? 0 });
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
  const carrying = back.find((step) => Math.abs(sound.amps(stepId(step))) > still);
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

function voltsGuess(
  routes: Routes,
  sound: FeedState,
  volts: ReadonlyMap<string, number>,
  station: string,
): number {
  const back = [
    station,
    ...wayTo(routes, station)
      .toReversed()
      .map(({ inner }) => inner),
  ];
  const known = back.find((one) => volts.has(one));
  const usual = sound.volts(station);
  if (known === undefined) return usual;
  const [found, there] = [volts.get(known) ?? 0, sound.volts(known)];
  // Near the positive post volts keep their proportion; near the negative post their difference.
  return there > 1 ? (usual * found) / there : Math.max(0, usual + found - there);
}
