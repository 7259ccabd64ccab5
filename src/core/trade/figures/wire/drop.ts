import { chosen, measured, namesOf, optional, ruleOfThumb } from '../../figure-words.ts';
import { makeFigure } from '../../figure.ts';
import { inSpan, span } from '../../span.ts';
import { asShown, convert, showReading } from '../../units/units.ts';
import { gauges, ohmsPerMetre, wireHeats, wireLengths } from './wire.ts';

export const currents = span('current', 0, 2000, 'A');
export const drops = span('drop', 0, 60, 'V');
const jointOhms = span('resistance', 0, 1e6, 'ohm');
const lineOhms = span('resistance per length', 0, 1e5, 'ohm/1000ft');
const systems = span('volts', 1, 60, 'V');

type Limit = {
  /** Volts at a current in a system of so many volts. */
  readonly volts: (amps: number, system: number) => number;
  readonly source: string;
};

const fixed = (volts: number) => (): number => volts;
const share =
  (part: number) =>
  (_: number, system: number): number =>
    part * system;

/** The drop a sound circuit may show, by kind of circuit; sources differ, each is named. */
const limits = {
  starter: { volts: (amps) => 0.2 * (amps / 100), source: 'US Army TM 10-3930-671-24' },
  'battery-cable': { volts: fixed(0.4), source: 'US Army TM 10-3930-671-24' },
  continuous: { volts: fixed(0.5), source: 'FAA AC 43.13-1B, from memory' },
  intermittent: { volts: fixed(1), source: 'FAA AC 43.13-1B, from memory' },
  critical: { volts: share(0.03), source: 'ABYC E-11 (boats)' },
  other: { volts: share(0.1), source: 'ABYC E-11 (boats)' },
  joint: { volts: fixed(0.1), source: 'common practice' },
  ground: { volts: fixed(0.2), source: 'common practice' },
  charging: { volts: fixed(0.5), source: 'common practice' },
  headlamp: { volts: fixed(0.3), source: 'common practice' },
} as const satisfies Readonly<Record<string, Limit>>;

/**
 * Volts lost in a resistance, current x resistance. Valid for 0 to 2000 A. Source: Ohm's law.
 * Worked example: 200 A through 0.01 ohm lose 2 V.
 */
export function voltageLost(amps: number, ohms: number): number {
  return inSpan(amps, currents) * inSpan(ohms, jointOhms);
}

type Run = {
  readonly resistance: number | undefined;
  readonly perLength: number | undefined;
  readonly gauge: number | undefined;
  readonly length: number | undefined;
  readonly runs: number;
  readonly temperature: number;
};

function runOhms({ resistance, perLength, gauge, length, runs, temperature }: Run): number {
  if (resistance !== undefined) return resistance;
  if (length !== undefined) {
    const metres = convert(length, 'ft', 'm') * runs;
    if (perLength !== undefined) return convert(perLength, 'ohm/1000ft', 'ohm/m') * metres;
    if (gauge !== undefined) return ohmsPerMetre({ gauge, kind: 'solid', temperature }) * metres;
  }
  throw new RangeError('give resistance, or length with gauge or perLength.');
}

export const voltageDrop = makeFigure({
  name: 'voltage-drop',
  family: 'wire',
  about: 'Volts lost along a wire or joint under load, against what a sound one may lose.',
  inputs: {
    current: measured('current', currents, 'through the circuit, under load'),
    resistance: optional('resistance', jointOhms, 'of the run, if known'),
    perLength: optional('line-resistance', lineOhms, 'of the wire'),
    gauge: optional('wire-gauge', gauges, 'of the wire'),
    length: optional('length', wireLengths, 'of one run'),
    runs: measured('count', span('runs', 1, 2, ''), '2 if the return is a wire', { default: 1 }),
    temperature: measured('temperature', wireHeats, 'of the wire', { default: 68 }),
    volts: measured('voltage', systems, 'of the system', { default: 12 }),
    circuit: chosen(namesOf(limits), 'kind of circuit', 'continuous'),
  },
  outputs: {
    result: { unit: 'V', about: 'volts lost' },
    share: { unit: '%', about: 'of the system volts' },
    limit: { unit: 'V', about: 'what a sound circuit of that kind may lose' },
    limitShare: { unit: '%', about: 'that limit, of the system volts' },
  },
  formula: 'V = I x R, R = ohms per length x length x runs',
  range: '0 to 2000 A, 1 to 60 V',
  source:
    "Ohm's law; limits: US Army TM 10-3930-671-24, ABYC E-11, FAA AC 43.13-1B, common practice",
  mark: 'computed',
  work: ({ current: amps, volts: system, circuit, ...run }) => {
    const lost = voltageLost(amps, runOhms(run));
    const limit: Limit = limits[circuit];
    const allowed = limit.volts(amps, system);
    return {
      values: {
        result: lost,
        share: (100 * lost) / system,
        limit: allowed,
        limitShare: (100 * allowed) / system,
      },
      verdict: amps === 0 ? noLoad : judgeDrop(lost, allowed, limit.source),
    };
  },
});

const noLoad = 'Nothing flows, so this tells nothing: switch the circuit on and measure again.';

function judgeDrop(lost: number, allowed: number, source: string): string {
  const against = `${showReading(allowed, 'V')} allowed (${source})`;
  const word = asShown(lost, 'V') > asShown(allowed, 'V') ? 'More than' : 'Within';
  return `${word} the ${against}. Measure under load only. ${ruleOfThumb}`;
}

/**
 * Heat, drop and resistance of one joint from its current and one of the other two: P = V x I,
 * V = I x R. Valid for 0 to 2000 A, 0 to 60 V. Source: Joule's and Ohm's laws. Worked example:
 * 0.2 V at 60 A is 12 W in 3.33 milliohm.
 */
export function jointLoss(amps: number, drop?: number, ohms?: number): JointLoss {
  inSpan(amps, currents);
  if ((drop === undefined) === (ohms === undefined)) {
    throw new RangeError('give either drop or resistance, not both and not neither.');
  }
  if (ohms !== undefined) {
    const lost = voltageLost(amps, ohms);
    return { drop: lost, watts: lost * amps, ohms };
  }
  const lost = inSpan(drop ?? Number.NaN, drops);
  return { drop: lost, watts: lost * amps, ohms: amps === 0 ? undefined : lost / amps };
}

export type JointLoss = {
  readonly drop: number;
  readonly watts: number;
  /** Not known when nothing flows. */
  readonly ohms: number | undefined;
};

export const jointHeat = makeFigure({
  name: 'joint-heat',
  family: 'wire',
  about: 'Heat made in a bad joint, from the current and its drop or resistance.',
  inputs: {
    current: measured('current', currents, 'through the joint'),
    drop: optional('voltage', drops, 'across the joint, under load'),
    resistance: optional('resistance', jointOhms, 'instead of the drop'),
  },
  outputs: {
    result: { unit: 'W', about: 'heat in the joint' },
    drop: { unit: 'V', about: 'volts lost' },
    resistance: { unit: 'ohm', about: 'resistance of the joint' },
  },
  formula: 'P = V x I = I^2 x R',
  range: '0 to 2000 A, 0 to 60 V',
  source: "Joule's and Ohm's laws; 0.1 V for a clean joint is common practice",
  mark: 'computed',
  work: ({ current, drop, resistance }) => {
    const loss = jointLoss(current, drop, resistance);
    const bad = loss.drop > 0.1;
    const found = bad
      ? 'More than a clean joint loses (0.1 V): clean, tighten or renew it, and let it cool first.'
      : 'No more than a clean joint loses (0.1 V).';
    return {
      values: { result: loss.watts, drop: loss.drop, resistance: loss.ohms },
      verdict: `${found} ${ruleOfThumb}`,
    };
  },
});
