import { at } from '../at.ts';
import { lampExponent } from '../trade/figures/lamps.ts';
import type { Feed } from '../tree/feed-model.ts';
import type { Part } from './circuit.ts';
import { changeOf, changed, coldShare, isOn, loadOhms } from './path.ts';
import type { Change, Setting } from './path.ts';
import { across, exchange, partIn, respond } from './view.ts';
import type { View } from './view.ts';

/** A lamp that is on: its ohms at the volts it is rated for, and those volts. */
export type Lamp = { readonly id: string; readonly ohms: number; readonly rated: number };

/** The lamps that find their own ohms; none while all are held hot or cold. */
export function lampsOf(feed: Feed, setting: Setting, changes: readonly Change[]): readonly Lamp[] {
  if (setting.filaments !== undefined) return [];
  return feed.loads
    .filter((load) => load.filament && isOn(load, setting))
    .flatMap((load) => {
      const ohms = changed(loadOhms(load), changeOf(changes, load.id));
      // A lamp told in ohms alone (which the check of a feed block refuses) keeps them.
      return ohms === undefined || !('at' in load.takes)
        ? []
        : [{ id: load.id, ohms, rated: load.takes.at }];
    });
}

/**
 * Amperes of a lamp at the volts across it: as the 0.55th power of the volts, down to where the
 * filament has its cold ohms, which it keeps below. Worked example: 4.3 A at 12.8 V is 2.94 A at
 * 6.4 V.
 */
export function lampAmps({ ohms, rated }: Omit<Lamp, 'id'>, volts: number): number {
  const share = (Math.abs(volts) / rated) ** (1 - lampExponent);
  return volts / (ohms * Math.max(coldShare, share));
}

/** Volts a lamp may still move when its ohms are taken as found. */
const settled = 1e-12;
/** Rounds after which lamps that still move are a fault of this program. */
const rounds = 100;

/**
 * The view with every lamp at the ohms its own volts give it (Newton's way: each lamp is taken as
 * the tangent to its law where it stands, until no lamp moves any more). What stands in the view
 * then is the tangent, so its answers to a small change hold for the lamps too.
 */
export function lightLamps(dark: View, lamps: readonly Lamp[]): View {
  const start = portsOf(dark, lamps);
  // From dark upward: a lamp's law bends down, so no round goes past the answer.
  let volts: readonly number[] = lamps.map(() => 0);
  for (let round = 0; round < rounds; round += 1) {
    const tangents = lamps.map((lamp, which) => tangent(lamp, at(volts, which)));
    const found = tangents.reduce(exchangeAt, start).map((port) => port.volts);
    if (found.every((now, which) => Math.abs(now - at(volts, which)) <= settled))
      return lamps.reduce((view, { id }, which) => exchange(view, id, at(tangents, which)), dark);
    volts = found;
  }
  throw new Error('The lamps of the feed path do not settle.');
}

/** What one lamp knows of the circuit: all else is worked out once, and the lamps among themselves. */
type Port = {
  readonly siemens: number;
  readonly volts: number;
  /** Volts over it for one ampere pushed in across each lamp. */
  readonly answers: readonly number[];
};

function portsOf(view: View, lamps: readonly Lamp[]): readonly Port[] {
  const parts = lamps.map(({ id }) => lampIn(view, id));
  const answers = parts.map(({ ends }) => respond(view, ...ends));
  return parts.map((part) => ({
    siemens: part.siemens,
    volts: across(view.volts, part),
    answers: answers.map((answer) => across(answer, part)),
  }));
}

/** The ports with one lamp exchanged: the formula of `exchange`, between the lamps alone. */
function exchangeAt(ports: readonly Port[], now: Tangent, which: number): readonly Port[] {
  const own = at(ports, which);
  const grown = now.siemens - own.siemens;
  const stiffness = 1 + grown * at(own.answers, which);
  const more = (grown * own.volts - now.siemens * now.volts) / stiffness;
  return ports.map(({ siemens, volts, answers }) => {
    const answer = at(answers, which);
    const share = (grown * answer) / stiffness;
    return {
      siemens,
      volts: volts - more * answer,
      answers: answers.map((each, other) => each - share * at(own.answers, other)),
    };
  });
}

/** Ohms of each lamp as it burns, by id. */
export function lampOhms(view: View, lamps: readonly Lamp[]): ReadonlyMap<string, number> {
  return new Map(
    lamps.map((lamp) => {
      const volts = across(view.volts, lampIn(view, lamp.id));
      const amps = lampAmps(lamp, volts);
      return [lamp.id, amps === 0 ? lamp.ohms * coldShare : volts / amps];
    }),
  );
}

function lampIn(view: View, id: string): Part {
  const part = partIn(view, id);
  if (part === undefined) throw new Error(`The circuit has no lamp "${id}".`);
  return part;
}

/** A lamp as a conductance with an electromotive force in it. */
type Tangent = { readonly siemens: number; readonly volts: number };

/** The conductance and the electromotive force that draw the lamp's amps here, and nearly so nearby. */
function tangent(lamp: Lamp, volts: number): Tangent {
  const cold = 1 / (lamp.ohms * coldShare);
  const amps = lampAmps(lamp, volts);
  if (Math.abs(amps - volts * cold) <= Math.abs(amps) * 1e-12) return { siemens: cold, volts: 0 };
  const siemens = (lampExponent * amps) / volts;
  return { siemens, volts: volts - amps / siemens };
}
