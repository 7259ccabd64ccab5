import type { Parsed } from '../problem.ts';
import { good } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { makeCircuit } from './circuit.ts';
import { battery, glows, isOn, running } from './path.ts';
import type { Change, Regime, Setting, Work } from './path.ts';

/** Regimes to try before the last one is taken. */
const tries = 6;

type Settled<T> = { readonly value: T; readonly regime: Regime };

const litLamps = (feed: Feed, setting: Setting): readonly string[] =>
  feed.loads.filter((load) => load.filament && isOn(load, setting)).map(({ id }) => id);

/**
 * Solves until the lamps (hot or cold) and the charging machines (giving, at their limit, or off)
 * agree with the volts found. A filament that went cold stays cold.
 */
export function settle<T>(
  { feed, setting }: { readonly feed: Feed; readonly setting: Setting },
  solve: (regime: Regime) => Parsed<T>,
  voltsAt: (solved: T, station: string) => number,
): Parsed<Settled<T>> {
  let regime: Regime = {
    cold: setting.filaments === 'cold' ? litLamps(feed, setting) : [],
    machines: [],
  };
  let solved = solve(regime);
  for (let round = 1; round < tries; round += 1) {
    if (solved.kind === 'bad') return solved;
    const { value } = solved;
    const wanted = wantedRegime(feed, setting, {
      regime,
      across: ({ from, to }) => voltsAt(value, from) - voltsAt(value, to),
    });
    if (keyOf(wanted) === keyOf(regime)) break;
    regime = wanted;
    solved = solve(regime);
  }
  return solved.kind === 'bad' ? solved : good({ value: solved.value, regime });
}

export const keyOf = ({ cold, machines }: Regime): string =>
  [...cold, ...machines.map(([id, work]) => `${id}=${work}`)].join(',');

type Ends = { readonly from: string; readonly to: string };
type Found = { readonly regime: Regime; readonly across: (ends: Ends) => number };

function wantedRegime(feed: Feed, setting: Setting, { regime, across }: Found): Regime {
  const dim = feed.loads.filter((load) => across(load) < glows).map(({ id }) => id);
  const cold =
    setting.filaments === undefined
      ? litLamps(feed, setting).filter((id) => regime.cold.includes(id) || dim.includes(id))
      : regime.cold;
  const machines = running(feed, setting).map((machine): readonly [string, Work] => {
    const { id, volts, milliohm, amps } = machine;
    const gives = ((volts - across(machine)) * 1000) / milliohm;
    if (gives > 0) return [id, gives > amps ? 'limit' : 'source'];
    return [id, 'off'];
  });
  return { cold, machines: machines.filter(([, work]) => work !== 'source') };
}

/** The feed path with everything told: volts of the stations, amps of spans, loads and battery. */
export type FeedState = {
  readonly volts: (station: string) => number;
  /** From `from` to `to` of the part, by span id or load id; 0 for what does not conduct. */
  readonly amps: (part: string) => number;
  /** Amps the battery gives; negative while it is charged. */
  readonly batteryAmps: number;
  readonly regime: Regime;
};

/** Solves a feed path as it stands, or with faults in it. */
export function solveFeed(
  feed: Feed,
  setting: Setting,
  changes: readonly Change[] = [],
): Parsed<FeedState> {
  const settled = settle(
    { feed, setting },
    (regime) => makeCircuit(feed, setting, regime, changes),
    ({ nodes, state }, station) => state.volts[nodes.get(station) ?? -1] ?? 0,
  );
  if (settled.kind === 'bad') return settled;
  const { nodes, parts, pushes, state } = settled.value.value;
  const amps = (id: string): number => {
    const part = parts.get(id);
    if (part === undefined) return pushes.get(id) ?? 0;
    const across = (state.volts[part.from] ?? 0) - (state.volts[part.to] ?? 0);
    return part.siemens * (across - part.volts);
  };
  return good({
    volts: (station) => state.volts[nodes.get(station) ?? -1] ?? 0,
    amps,
    batteryAmps: -amps(battery),
    regime: settled.value.regime,
  });
}
