import type { Feed, Load, Machine, Span } from '../tree/feed-model.ts';
import type { Element } from './network.ts';
import { wireOhms } from './wire.ts';

/** The battery's own names among the parts; stations and loads cannot start with a dot. */
export const battery = '.battery';
export const emf = '.emf';
/** Input resistance of a common voltmeter (common practice): it decides what a dead part reads. */
export const meterOhms = 10e6;
/** A cold filament has about a tenth of its hot resistance (common practice). */
export const coldShare = 0.1;

/** Something that is not as the feed block says. */
export type Change =
  | { readonly kind: 'ohms'; readonly part: string; readonly ohms: number }
  | { readonly kind: 'open'; readonly part: string }
  | { readonly kind: 'battery'; readonly volts: number; readonly ohms: number };

/** How a charging machine works just now: holding its volts, giving all it can, or not at all. */
export type Work =
  | { readonly kind: 'source' | 'off' }
  | { readonly kind: 'limit'; readonly amps: number };

/** The state of the parts that work in one of several ways. */
export type Regime = {
  readonly machines: ReadonlyMap<string, Work>;
  /** A battery that is being charged stands higher, and takes less. */
  readonly battery: 'rest' | 'charging';
  /** Contacts, by span, whose relay is not pulled in. */
  readonly dropped: ReadonlySet<string>;
  /** Ohms of lamps that are not as they burn at their rated volts. */
  readonly lamps: ReadonlyMap<string, number>;
};

export type Setting = {
  /** Loads, switches and machines that are on. */
  readonly on: readonly string[];
  /** `out`: its ground lead is off. Left out: in. */
  readonly battery?: 'in' | 'out';
  /** Lamps all as at their rated volts, all cold, or as their own volts have it (left out). */
  readonly filaments?: 'hot' | 'cold';
};

export const spanId = ({ from, to }: Pick<Span, 'from' | 'to'>): string => `${from}:${to}`;

/**
 * The feed path of one kind of vehicle: without what `holds` says it has not, and without whatever
 * hangs on a station that is gone. Keep the answer: what is worked out is kept with it.
 */
export function feedFor(feed: Feed, holds: (when: When) => boolean): Feed {
  const has = ({ when }: { readonly when?: When | undefined }): boolean =>
    when === undefined || holds(when);
  const stations = Object.fromEntries(Object.entries(feed.stations).filter(([, one]) => has(one)));
  const kept = (part: { from: string; to: string; when?: When | undefined }): boolean =>
    has(part) && Object.hasOwn(stations, part.from) && Object.hasOwn(stations, part.to);
  return {
    ...feed,
    stations,
    spans: feed.spans.filter(kept),
    loads: feed.loads.filter(kept),
    machines: feed.machines.filter(kept),
  };
}

type When = NonNullable<Span['when']>;

/** The span that joins two stations, named in either order. */
export function spanBetween(feed: Feed, [one, other]: readonly [string, string]): Span | undefined {
  return feed.spans.find(
    ({ from, to }) => (from === one && to === other) || (from === other && to === one),
  );
}

/** Ohms of a sound span: its wire at 20 °C and its joints. */
export function spanOhms(span: Span): number {
  const wire = span.wire === undefined ? 0 : wireOhms(span.wire.gauge, span.wire.metres);
  return wire + jointOhms(span);
}

function jointOhms(span: Span): number {
  return span.joints.reduce((sum, joint) => sum + joint.milliohm / 1000, 0);
}

/** Ohms of a load at the volts it is rated for; hot, if it is a lamp. */
export function loadOhms({ takes }: Load): number {
  if ('ohms' in takes) return takes.ohms;
  return 'amps' in takes ? takes.at / takes.amps : takes.at ** 2 / takes.watts;
}

export const isOn = (load: Load, setting: Setting): boolean =>
  load.always || setting.on.includes(load.with ?? load.id);

export const closed = (span: Span, setting: Setting): boolean =>
  span.switch === undefined || setting.on.includes(span.switch);

/** Machines that run. */
export const running = (feed: Feed, setting: Setting): readonly Machine[] =>
  setting.battery !== 'out' ? feed.machines.filter(({ id }) => setting.on.includes(id)) : [];

export type Battery = { readonly volts: number; readonly ohms: number };

export function batteryOf(feed: Feed, regime: Regime): Battery {
  const charging = regime.battery === 'charging' ? feed.battery.charging : undefined;
  const { volts, milliohm } = charging ?? feed.battery;
  return { volts, ohms: milliohm / 1000 };
}

/** The parts of the circuit as the solver takes them. */
export function elementsOf(
  feed: Feed,
  setting: Setting,
  regime: Regime,
  changes: readonly Change[] = [],
): readonly Element[] {
  const spans = feed.spans
    .filter((span) => closed(span, setting) && !regime.dropped.has(spanId(span)))
    .flatMap((span) => spanElement(span, changeOf(changes, spanId(span))));
  const loads = feed.loads
    .filter((load) => isOn(load, setting))
    .flatMap((load) => loadElement(load, setting, regime, changeOf(changes, load.id)));
  const machines = running(feed, setting).flatMap((machine) => machineElement(machine, regime));
  if (setting.battery === 'out') return [...spans, ...loads];
  return [...batteryElements(feed, regime, changes), ...spans, ...loads, ...machines];
}

/** What a change does to one part; a change of the battery is none of a part. */
export function changeOf(changes: readonly Change[], part: string): Change | undefined {
  return changes.find((change) => change.kind !== 'battery' && change.part === part);
}

/** What a change makes of a part's ohms; nothing for a part that conducts no more. */
export function changed(
  ohms: number,
  change: Change | undefined,
  leak?: number,
): number | undefined {
  if (change?.kind === 'open') return leak;
  return change?.kind === 'ohms' ? change.ohms : ohms;
}

function spanElement(span: Span, change: Change | undefined): readonly Element[] {
  const ohms = changed(spanOhms(span), change, span.leak);
  if (ohms === undefined) return [];
  return [{ kind: 'resistor', id: spanId(span), from: span.from, to: span.to, ohms }];
}

function loadElement(
  load: Load,
  { filaments }: Setting,
  { lamps }: Regime,
  change: Change | undefined,
): readonly Element[] {
  const hot = changed(loadOhms(load), change);
  if (hot === undefined) return [];
  const cold = load.filament && filaments === 'cold';
  const ohms = lamps.get(load.id) ?? (cold ? hot * coldShare : hot);
  return [{ kind: 'resistor', id: load.id, from: load.from, to: load.to, ohms }];
}

function machineElement(machine: Machine, { machines }: Regime): readonly Element[] {
  const { id, from, to, volts, milliohm } = machine;
  const work = machines.get(id) ?? { kind: 'source' };
  if (work.kind === 'off') return [];
  if (work.kind === 'limit') return [{ kind: 'current', id, from, to, amps: -work.amps }];
  return [{ kind: 'source', id, from, to, volts, ohms: milliohm / 1000 }];
}

function batteryElements(
  feed: Feed,
  regime: Regime,
  changes: readonly Change[],
): readonly Element[] {
  const change = changes.find(({ kind }) => kind === 'battery');
  const { volts, ohms } = change?.kind === 'battery' ? change : batteryOf(feed, regime);
  const { positive, negative } = feed.battery;
  return [
    { kind: 'source', id: emf, from: emf, to: negative, volts, ohms: 0 },
    { kind: 'resistor', id: battery, from: positive, to: emf, ohms },
  ];
}
