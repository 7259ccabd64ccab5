import { measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { asShown, showReading } from '../units/units.ts';

const supplies = span('volts', 0, 30, 'V');
const coilOhms = span('coil', 0.1, 100, 'ohm');
const ballastOhms = span('ballast', 0, 100, 'ohm');
const inductances = span('inductance', 0.01, 1000, 'mH');
const closings = span('time', 0, 10_000, 'ms');

/** Amperes that points handle, published. */
const pointsAmps = { low: 4, high: 5 } as const;

/**
 * Coil current in amperes so long after the points close: V / R x (1 - exp(-t R / L)), R of coil
 * and ballast, t in ms, L in mH. Source: first-order circuit. Worked example: 13.8 V, 3 ohm, 9 mH,
 * 3 ms: 2.908 A.
 */
export function coilCurrentAt(supply: Supply, inductance: number, time: number): number {
  const elapsed = inSpan(time, closings) / timeConstant(supply, inductance);
  return steadyCurrent(supply) * -Math.expm1(-elapsed);
}

export type Supply = { readonly volts: number; readonly coil: number; readonly ballast: number };

/** Closed-points current, V / (coil + ballast). Worked example: 12 V, 1.5 + 1.5 ohm: 4 A. */
export function steadyCurrent({ volts, coil, ballast }: Supply): number {
  return inSpan(volts, supplies) / (inSpan(coil, coilOhms) + inSpan(ballast, ballastOhms));
}

/** Time constant L / R in ms; 95 % after three of them. Worked example: 9 mH, 3 ohm: 3 ms. */
export function timeConstant({ coil, ballast }: Supply, inductance: number): number {
  return inSpan(inductance, inductances) / (inSpan(coil, coilOhms) + inSpan(ballast, ballastOhms));
}

const circuit = {
  volts: measured('voltage', supplies, 'at the coil circuit', { default: 12 }),
  coil: measured('resistance', coilOhms, 'primary winding', { default: 3 }),
  ballast: measured('resistance', ballastOhms, 'resistor or wire before it', { default: 0 }),
  inductance: measured('inductance', inductances, 'primary; measure if it matters', { default: 9 }),
};

export const coilCurrent = makeFigure({
  name: 'coil-current',
  family: 'ignition',
  about: 'Primary current of an ignition coil, steady and as it builds up.',
  inputs: {
    ...circuit,
    time: optional('time', closings, 'since the points closed'),
  },
  outputs: {
    result: { unit: 'A', about: 'current then; steady if no time is given' },
    steady: { unit: 'A', about: 'current with points closed for long' },
    timeConstant: { unit: 'ms', about: 'L / R' },
    built: { unit: 'ms', about: 'until 95 % is reached' },
    ballastDrop: { unit: 'V', about: 'across the ballast, steady' },
    pointsLow: { unit: 'A', about: 'points handle this' },
    pointsHigh: { unit: 'A', about: 'up to this' },
  },
  formula: 'I = V / R x (1 - exp(-t R / L))',
  range: '0 to 30 V, 0.1 to 100 ohm, 0.01 to 1000 mH',
  source: 'first-order circuit; 4 to 5 A for points US Army TM 9-8000; 9 mH from memory',
  mark: 'computed',
  work: ({ inductance, time, ...supply }) => {
    const steady = steadyCurrent(supply);
    return {
      values: {
        result: time === undefined ? steady : coilCurrentAt(supply, inductance, time),
        steady,
        timeConstant: timeConstant(supply, inductance),
        built: 3 * timeConstant(supply, inductance),
        ballastDrop: steady * supply.ballast,
        pointsLow: pointsAmps.low,
        pointsHigh: pointsAmps.high,
      },
      verdict: judgeCoil(steady),
    };
  },
});

function judgeCoil(steady: number): string {
  const told = `points handle ${pointsAmps.low} to ${showReading(pointsAmps.high, 'A')}`;
  return steady > pointsAmps.high
    ? `Too much for long: ${told}; is the ballast there? ${ruleOfThumb}`
    : `Points live with this: ${told}. ${ruleOfThumb}`;
}

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
    ...circuit,
    time: optional('time', closings, 'points closed (spark-rate tells it)'),
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
  work: ({ inductance, time, ...supply }) => {
    const steady = steadyCurrent(supply);
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
    read: optional('voltage', supplies, 'read at the coil, points closed'),
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
  work: ({ volts, coil, ballast, read }) => {
    const closed = coilVoltsOf(volts, coil, ballast);
    return {
      values: {
        result: closed,
        drop: volts - closed,
        current: steadyCurrent({ volts, coil, ballast }),
      },
      verdict: judgeCoilVolts(closed, volts, read),
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

const kicks = span('kick', 0, 1000, 'V');
const windings = span('turns', 1, 1000, '');

/** Secondary volts from the primary kick and the turns ratio. Worked example: 200 V, 100: 20000. */
export function secondaryVolts(kick: number, ratio: number): number {
  return inSpan(kick, kicks) * inSpan(ratio, windings);
}

export const coilSecondary = makeFigure({
  name: 'coil-secondary',
  family: 'ignition',
  about: 'High-tension volts of a coil from its primary kick and turns ratio.',
  inputs: {
    kick: measured('voltage', kicks, 'primary volts as the points open', { default: 200 }),
    turns: measured('ratio', windings, 'secondary turns for one primary turn', { default: 100 }),
  },
  outputs: { result: { unit: 'V', about: 'high tension' } },
  formula: 'V2 = V1 x turns ratio',
  range: '0 to 1000 V, 1 to 1000 turns',
  source: 'US Army TM 9-8000 chapter 15',
  mark: 'computed',
  work: ({ kick, turns }) => ({
    values: { result: secondaryVolts(kick, turns) },
    verdict: 'Insulated pliers, dry hands; never with a pacemaker.',
  }),
});
