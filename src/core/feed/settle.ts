import type { Feed, Machine } from '../tree/feed-model.ts';
import { makeCircuit } from './circuit.ts';
import { lampOhms, lampsOf, lightLamps } from './lamp.ts';
import { battery, loadOhms, running, spanId } from './path.ts';
import type { Change, Regime, Setting, Work } from './path.ts';
import { across, partIn, whole } from './view.ts';
import type { View } from './view.ts';

type Settled = { readonly view: View; readonly regime: Regime };

/** Amps a machine at its limit may still move when it is taken as settled. */
const close = 1e-9;
/** Share of its full field under which a machine gives nothing (common practice, no source). */
const leastField = 0.05;
/** Regimes tried before the last one is taken; a machine's limit comes within reach of `close` in 10. */
const tries = 40;

/**
 * Solves until the charging machines (holding their volts, at their limit, or off) and the battery
 * (charged, or at rest while no machine gives) and the relays agree with the volts found. A battery
 * that came to rest stays there.
 */
export function settle(
  { feed, setting }: { readonly feed: Feed; readonly setting: Setting },
  solve: (regime: Regime) => View,
): Settled {
  let regime: Regime = {
    machines: new Map(),
    battery: running(feed, setting).length > 0 ? 'charging' : 'rest',
    dropped: new Set(),
    lamps: new Map(),
  };
  let view = solve(regime);
  for (let round = 1; round < tries; round += 1) {
    const wanted = wantedRegime(feed, setting, { regime, view });
    if (keyOf(wanted) === keyOf(regime)) break;
    regime = wanted;
    view = solve(regime);
  }
  return { view, regime };
}

export const keyOf = ({ machines, battery: state, dropped }: Regime): string =>
  [state, ...[...machines].map(([id, work]) => `${id}=${workKey(work)}`), ...dropped].join(',');

const workKey = (work: Work): string =>
  work.kind === 'limit' ? `${Math.round(work.amps / close)}` : work.kind;

function wantedRegime(feed: Feed, setting: Setting, { regime, view }: Settled): Regime {
  const machines = running(feed, setting).map((machine): readonly [string, Work] => [
    machine.id,
    workOf(feed, machine, view),
  ]);
  const charged = machines.some(([, work]) => work.kind !== 'off');
  return {
    ...regime,
    machines: new Map(machines.filter(([, work]) => work.kind !== 'source')),
    battery: charged ? regime.battery : 'rest',
    dropped: new Set([...regime.dropped, ...droppedIn(feed, view)]),
  };
}

/**
 * Contacts whose coil gets less than pulls it in, by its current: an open coil has volts and does
 * nothing. One that has dropped stays so: what would pull it in again and drop it again is a chatter.
 */
const droppedIn = (feed: Feed, view: View): readonly string[] =>
  feed.spans.flatMap((span) => {
    const coil = feed.loads.find(({ id }) => id === span.relay?.coil);
    if (span.relay === undefined || coil === undefined) return [];
    const volts = Math.abs(ampsIn(view, coil.id)) * loadOhms(coil);
    return volts < span.relay.pulls ? [spanId(span)] : [];
  });

function workOf(feed: Feed, machine: Machine, view: View): Work {
  const { nodes } = view.circuit;
  const [from, to] = [nodes.get(machine.from), nodes.get(machine.to)];
  if (from === undefined || to === undefined) return { kind: 'off' };
  const gives = ((machine.volts - across(view.volts, { from, to })) * 1000) / machine.milliohm;
  const share = fieldShare(feed, machine, view);
  if (gives <= 0 || share < leastField) return { kind: 'off' };
  const most = machine.amps * share;
  return gives > most ? { kind: 'limit', amps: most } : { kind: 'source' };
}

/**
 * Share of its rated amps that a machine's field lets it give, from 0 to 1: as the current of its
 * field to what the field takes at the machine's own volts (common practice, no source). A machine
 * whose field the feed block does not name always has it.
 */
function fieldShare(feed: Feed, { field, volts }: Machine, view: View): number {
  const winding = feed.loads.find(({ id }) => id === field);
  if (winding === undefined) return 1;
  const share = (ampsIn(view, winding.id) * loadOhms(winding)) / volts;
  return Math.min(1, Math.max(0, share));
}

/** Amps of a part from `from` to `to`; 0 for what does not conduct. */
function ampsIn(view: View, id: string): number {
  const part = partIn(view, id);
  if (part === undefined) return view.circuit.pushes.get(id) ?? 0;
  return part.siemens * (across(view.volts, part) - part.volts);
}

/** The feed path with everything told: volts of the stations, amps of spans, loads and battery. */
export type FeedState = {
  /** 0 at a station that this vehicle has not. */
  readonly volts: (station: string) => number;
  /** From `from` to `to` of the part, by span id or load id; 0 for what does not conduct. */
  readonly amps: (part: string) => number;
  /** Amps the battery gives; negative while it is charged. */
  readonly batteryAmps: number;
  /** What the parts that do not follow Ohm's law settled at: the network of this answer is theirs. */
  readonly regime: Regime;
};

/** Solves a feed path as it stands, or with faults in it. */
export function solveFeed(
  feed: Feed,
  setting: Setting,
  changes: readonly Change[] = [],
): FeedState {
  const lamps = lampsOf(feed, setting, changes);
  const { view, regime } = settle({ feed, setting }, (now) =>
    lightLamps(whole(makeCircuit(feed, setting, now, changes)), lamps),
  );
  return {
    volts: (station) => view.volts[view.circuit.nodes.get(station) ?? -1] ?? 0,
    amps: (part) => ampsIn(view, part),
    batteryAmps: -ampsIn(view, battery),
    regime: { ...regime, lamps: lampOhms(view, lamps) },
  };
}
