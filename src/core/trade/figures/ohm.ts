import { measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';

const volts = span('volts', 0, 100_000, 'V');
const amps = span('current', 0, 5000, 'A');
const ohms = span('resistance', 0, 1e9, 'ohm');
const watts = span('power', 0, 1e6, 'W');

/** Two of the four that Ohm's and Joule's laws bind together. */
export type OhmGiven = {
  readonly volts?: number | undefined;
  readonly amps?: number | undefined;
  readonly ohms?: number | undefined;
  readonly watts?: number | undefined;
};

/** Volts, amperes, ohms and watts of one part of a circuit. */
export type OhmFound = {
  readonly volts: number;
  readonly amps: number;
  /** Not known where nothing flows. */
  readonly ohms: number | undefined;
  readonly watts: number;
};

/**
 * Volts, amperes, ohms and watts from any two of them: V = I R, P = V I. RangeError unless exactly
 * two are given, and for two that leave the others open (0 A or 0 V with watts). Source: Ohm's and
 * Joule's laws. Worked example: 12 V, 3 ohm: 4 A, 48 W.
 */
export function ohmsLawOf(given: OhmGiven): OhmFound {
  const count = Object.values(given).filter((each) => each !== undefined).length;
  if (count !== 2) throw new RangeError('give two of volts, current, resistance and power.');
  const amperes = current(given);
  const tension = given.volts ?? pressureOf(given, amperes);
  return {
    volts: tension,
    amps: amperes,
    ohms: given.ohms ?? (amperes === 0 ? undefined : tension / amperes),
    watts: given.watts ?? tension * amperes,
  };
}

function current({
  volts: tension,
  amps: given,
  ohms: resistance,
  watts: power,
}: OhmGiven): number {
  if (given !== undefined) return inSpan(given, amps);
  if (tension !== undefined && resistance !== undefined)
    return inSpan(divided(inSpan(tension, volts), inSpan(resistance, ohms)), amps);
  if (tension !== undefined && power !== undefined)
    return inSpan(divided(inSpan(power, watts), inSpan(tension, volts)), amps);
  if (power !== undefined && resistance !== undefined)
    return inSpan(Math.sqrt(divided(inSpan(power, watts), inSpan(resistance, ohms))), amps);
  throw new RangeError('give two of volts, current, resistance and power.');
}

function pressureOf({ ohms: resistance, watts: power }: OhmGiven, amperes: number): number {
  if (resistance !== undefined) return inSpan(amperes * inSpan(resistance, ohms), volts);
  if (power !== undefined) return inSpan(divided(inSpan(power, watts), amperes), volts);
  throw new RangeError('give two of volts, current, resistance and power.');
}

function divided(top: number, bottom: number): number {
  if (bottom === 0) throw new RangeError('nothing can be divided by 0: give two others.');
  return top / bottom;
}

export const ohmsLaw = makeFigure({
  name: 'ohms-law',
  family: 'wire',
  about: 'Volts, current, resistance and power of a part, from any two of them.',
  inputs: {
    volts: optional('voltage', volts, 'across the part'),
    current: optional('current', amps, 'through it'),
    resistance: optional('resistance', ohms, 'of it'),
    power: optional('power', watts, 'it takes'),
  },
  outputs: {
    result: { unit: 'A', about: 'current' },
    volts: { unit: 'V', about: 'volts' },
    resistance: { unit: 'ohm', about: 'resistance' },
    power: { unit: 'W', about: 'power' },
  },
  formula: 'V = I x R; P = V x I',
  range: 'two of the four; up to 5000 A',
  source: "Ohm's and Joule's laws",
  mark: 'computed',
  work: (given) => {
    const found = ohmsLawOf({
      volts: given.volts,
      amps: given.current,
      ohms: given.resistance,
      watts: given.power,
    });
    return {
      values: {
        result: found.amps,
        volts: found.volts,
        resistance: found.ohms,
        power: found.watts,
      },
      verdict: 'A lamp or a winding changes with heat: cold ohms tell no running current.',
    };
  },
});

const systems = span('volts', 1, 60, 'V');
const loadWatts = span('power', 0, 5000, 'W');
const loadAmps = span('current', 0, 500, 'A');

/** A fuse carries a steady load of 80 % of its rating: common practice. */
const steadyShare = 0.8;

/**
 * Amperes of loads that are on together: their watts over the volts, and their amperes. RangeError
 * when there is no load. Worked example: 55, 55 and 5 W and 3 A on 12 V: 12.583 A.
 */
export function sumOfLoads(
  powers: readonly number[],
  currents: readonly number[],
  system: number,
): number {
  if (powers.length + currents.length === 0) throw new RangeError('give watts, amps or both.');
  const total = powers.reduce((sum, each) => sum + inSpan(each, loadWatts), 0);
  return currents.reduce(
    (sum, each) => sum + inSpan(each, loadAmps),
    total / inSpan(system, systems),
  );
}

export const loadSum = makeFigure({
  name: 'load-sum',
  family: 'wire',
  about: 'Current of several loads that are on together, and the least fuse for them.',
  inputs: {
    watts: measured('power', loadWatts, 'each load by its power', { list: true, optional: true }),
    amps: measured('current', loadAmps, 'each load by its current', { list: true, optional: true }),
    volts: measured('voltage', systems, 'at which the powers hold', { default: 12 }),
  },
  outputs: {
    result: { unit: 'A', about: 'current of all together' },
    power: { unit: 'W', about: 'power of all together' },
    fuse: { unit: 'A', about: 'least fuse for a steady load, current / 0.8' },
  },
  formula: 'sum of watts / volts + sum of amperes; fuse = current / 0.8',
  range: '0 to 5000 W and 0 to 500 A each, 1 to 60 V',
  source: "Ohm's law; 80 % of a fuse is common practice",
  mark: 'computed',
  work: ({ watts: powers, amps: drawn, volts: system }) => {
    const total = sumOfLoads(powers, drawn, system);
    return {
      values: { result: total, power: total * system, fuse: total / steadyShare },
      verdict: `The fuse guards the wire: never larger than the wire may carry. ${ruleOfThumb}`,
    };
  },
});
