import { coilCurrentAt, steadyCurrent } from './coil.ts';
import { closedTime, dwellAngle } from './dwell.ts';
import { measured, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { asShown, showReading } from '../units/units.ts';

const lobes = span('cylinders', 1, 12, '');
const speeds = span('speed', 1, 20_000, 'rpm');
const percents = span('percent', 1, 99, '%');

/**
 * Sparks a minute of one distributor on a four-stroke engine: rpm x cylinders / 2. Valid for 1 to
 * 12 cylinders, 1 to 20,000 rpm. Source: geometry. Worked example: 8 at 4000 rpm: 16,000.
 */
export function sparksAMinute(cylinders: number, rpm: number): number {
  return (inSpan(rpm, speeds) * inSpan(cylinders, lobes)) / 2;
}

export const sparkRate = makeFigure({
  name: 'spark-rate',
  family: 'ignition',
  about: 'Sparks a minute, and the time the coil has for each.',
  inputs: {
    cylinders: measured('count', lobes, 'of a four-stroke with one coil'),
    speed: measured('rotation', speeds, 'of the engine'),
    percent: measured('ratio', percents, 'dwell: share of time closed', { default: 60 }),
  },
  outputs: {
    result: { unit: 'sparks/min', about: 'sparks a minute' },
    between: { unit: 'ms', about: 'from spark to spark' },
    closed: { unit: 'ms', about: 'points closed for each' },
  },
  formula: 'sparks = rpm x cylinders / 2; ms = 60000 / sparks',
  range: '1 to 12 cylinders, 1 to 20,000 rpm',
  source: 'geometry',
  mark: 'computed',
  work: (inputs) => {
    const [count, rpm] = [inputs.number('cylinders'), inputs.number('speed')];
    const sparks = sparksAMinute(count, rpm);
    const angle = dwellAngle(count, inputs.number('percent'));
    return {
      values: { result: sparks, between: 60_000 / sparks, closed: closedTime(angle, rpm) },
    };
  },
});

const supplies = span('volts', 0, 30, 'V');
const coilOhms = span('coil', 0.1, 100, 'ohm');
const ballastOhms = span('ballast', 0, 100, 'ohm');
const inductances = span('inductance', 0.01, 1000, 'mH');
const closings = span('time', 0, 10_000, 'ms');

/**
 * Millijoules that a coil of so many mH holds at a current: L x I^2 / 2. Source: definition of
 * inductance. Worked example: 9 mH, 4 A: 72 mJ.
 */
export function coilMillijoules(inductance: number, amps: number): number {
  return (inSpan(inductance, inductances) * inSpan(amps, span('current', 0, 300, 'A')) ** 2) / 2;
}

export const coilEnergy = makeFigure({
  name: 'coil-energy',
  family: 'ignition',
  about: 'Energy in the coil for one spark, as far as the points stay closed long enough.',
  inputs: {
    volts: measured('voltage', supplies, 'at the coil circuit', { default: 12 }),
    coil: measured('resistance', coilOhms, 'primary winding', { default: 3 }),
    ballast: measured('resistance', ballastOhms, 'resistor or wire before it', { default: 0 }),
    inductance: measured('inductance', inductances, 'primary; measure if it matters', {
      default: 9,
    }),
    time: measured('time', closings, 'points closed (spark-rate tells it)', { optional: true }),
  },
  outputs: {
    result: { unit: 'mJ', about: 'in the coil as the points open' },
    current: { unit: 'A', about: 'current then' },
    most: { unit: 'mJ', about: 'with points closed for long' },
  },
  formula: 'E = L x I^2 / 2, I = V / R x (1 - exp(-t R / L))',
  range: '0 to 30 V, 0.1 to 100 ohm, 0.01 to 1000 mH',
  source: 'first-order circuit; 9 mH from memory',
  mark: 'computed',
  work: (inputs) => {
    const supply = {
      volts: inputs.number('volts'),
      coil: inputs.number('coil'),
      ballast: inputs.number('ballast'),
    };
    const inductance = inputs.number('inductance');
    const [steady, time] = [steadyCurrent(supply), inputs.maybe('time')];
    const current = time === undefined ? steady : coilCurrentAt(supply, inductance, time);
    return {
      values: {
        result: coilMillijoules(inductance, current),
        current,
        most: coilMillijoules(inductance, steady),
      },
      verdict: 'What reaches the plug is less: cap, rotor, leads and the coil itself take a part.',
    };
  },
});

/**
 * Volts at the supply side of a coil behind a ballast with the points closed: V x coil / (coil +
 * ballast). Source: Ohm's law. Worked example: 12 V, 1.5 + 1.5 ohm: 6 V.
 */
export function coilVoltsOf(volts: number, coil: number, ballast: number): number {
  const winding = inSpan(coil, coilOhms);
  return (inSpan(volts, supplies) * winding) / (winding + inSpan(ballast, ballastOhms));
}

export const coilVolts = makeFigure({
  name: 'coil-volts',
  family: 'ignition',
  about: 'Volts at a ballasted coil, key on and points closed.',
  inputs: {
    volts: measured('voltage', supplies, 'before the ballast', { default: 12 }),
    coil: measured('resistance', coilOhms, 'primary winding', { default: 1.5 }),
    ballast: measured('resistance', ballastOhms, 'resistor or wire before it', { default: 1.5 }),
    read: measured('voltage', supplies, 'read at the coil, points closed', { optional: true }),
  },
  outputs: {
    result: { unit: 'V', about: 'at the coil, points closed' },
    drop: { unit: 'V', about: 'across the ballast' },
    current: { unit: 'A', about: 'through both' },
  },
  formula: 'V x coil / (coil + ballast); points open: all of V',
  range: '0 to 30 V, coil 0.1 to 100 ohm, ballast 0 to 100 ohm',
  source: "Ohm's law; 1.5 ohm each is common practice; a tenth of room is common practice",
  mark: 'computed',
  work: (inputs) => {
    const [volts, coil] = [inputs.number('volts'), inputs.number('coil')];
    const ballast = inputs.number('ballast');
    const closed = coilVoltsOf(volts, coil, ballast);
    return {
      values: {
        result: closed,
        drop: volts - closed,
        current: steadyCurrent({ volts, coil, ballast }),
      },
      verdict: judgeCoilVolts(closed, volts, inputs.maybe('read')),
    };
  },
});

function judgeCoilVolts(closed: number, supply: number, read?: number): string {
  const told = showReading(closed, 'V');
  if (read === undefined) return `With the points open it reads all of the supply. ${ruleOfThumb}`;
  const seen = asShown(read, 'V');
  if (seen > closed * 1.1)
    return seen > supply * 0.95
      ? `All of the supply: the points are open or do not ground, or the ballast is bypassed. ${ruleOfThumb}`
      : `More than ${told}: bad points or ground, or too little ballast. ${ruleOfThumb}`;
  if (seen < closed * 0.9) return `Less than ${told}: a drop before the coil. ${ruleOfThumb}`;
  return `About the ${told} it should be. ${ruleOfThumb}`;
}

const housings = span('diameter', 10, 300, 'mm');
const turns = span('angle', 0, 360, 'deg');

/**
 * Millimetres around a distributor housing for so many distributor degrees: pi x diameter x degrees
 * / 360. Source: geometry. Worked example: 70 mm, 5 degrees: 3.054 mm.
 */
export function housingArc(diameter: number, angle: number): number {
  return (Math.PI * inSpan(diameter, housings) * inSpan(angle, turns)) / 360;
}

export const distributorArc = makeFigure({
  name: 'distributor-arc',
  family: 'ignition',
  about: 'How far to turn a distributor, measured around its housing.',
  inputs: {
    diameter: measured('length', housings, 'of the housing where it is measured'),
    angle: measured('angle', turns, 'distributor degrees; half the crank degrees', { default: 1 }),
  },
  outputs: {
    result: { unit: 'mm', about: 'around the housing' },
    perLength: { unit: 'deg/mm', about: 'distributor degrees a millimetre' },
    crank: { unit: 'deg/mm', about: 'crank degrees a millimetre' },
    share: { unit: '%', about: 'of the way around' },
  },
  formula: 'arc = pi x diameter x degrees / 360',
  range: '10 to 300 mm, 0 to 360 degrees',
  source: 'geometry',
  mark: 'computed',
  work: (inputs) => {
    const [diameter, angle] = [inputs.number('diameter'), inputs.number('angle')];
    const perLength = 1 / housingArc(diameter, 1);
    return {
      values: {
        result: housingArc(diameter, angle),
        perLength,
        crank: 2 * perLength,
        share: angle / 3.6,
      },
      verdict: 'Turned against the rotor it advances, with the rotor it retards.',
    };
  },
});
