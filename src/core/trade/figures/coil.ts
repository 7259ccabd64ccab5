import { measured, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { showReading } from '../units/units.ts';

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

export const coilCurrent = makeFigure({
  name: 'coil-current',
  family: 'ignition',
  about: 'Primary current of an ignition coil, steady and as it builds up.',
  inputs: {
    volts: measured('voltage', supplies, 'at the coil circuit', { default: 12 }),
    coil: measured('resistance', coilOhms, 'primary winding', { default: 3 }),
    ballast: measured('resistance', ballastOhms, 'resistor or wire before it', { default: 0 }),
    inductance: measured('inductance', inductances, 'primary; measure if it matters', {
      default: 9,
    }),
    time: measured('time', closings, 'since the points closed', { optional: true }),
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
  work: (inputs) => {
    const supply = {
      volts: inputs.number('volts'),
      coil: inputs.number('coil'),
      ballast: inputs.number('ballast'),
    };
    const inductance = inputs.number('inductance');
    const steady = steadyCurrent(supply);
    const time = inputs.maybe('time');
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

const kicks = span('kick', 0, 1000, 'V');
const turns = span('turns', 1, 1000, '');

/** Secondary volts from the primary kick and the turns ratio. Worked example: 200 V, 100: 20000. */
export function secondaryVolts(kick: number, ratio: number): number {
  return inSpan(kick, kicks) * inSpan(ratio, turns);
}

export const coilSecondary = makeFigure({
  name: 'coil-secondary',
  family: 'ignition',
  about: 'High-tension volts of a coil from its primary kick and turns ratio.',
  inputs: {
    kick: measured('voltage', kicks, 'primary volts as the points open', { default: 200 }),
    turns: measured('ratio', turns, 'secondary turns for one primary turn', { default: 100 }),
  },
  outputs: { result: { unit: 'V', about: 'high tension' } },
  formula: 'V2 = V1 x turns ratio',
  range: '0 to 1000 V, 1 to 1000 turns',
  source: 'US Army TM 9-8000 chapter 15',
  mark: 'computed',
  work: (inputs) => ({
    values: { result: secondaryVolts(inputs.number('kick'), inputs.number('turns')) },
    verdict: 'Insulated pliers, dry hands; never with a pacemaker.',
  }),
});
