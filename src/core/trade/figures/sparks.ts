import { closedTime, dwellAngle } from './dwell.ts';
import { measured } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';

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
  work: ({ cylinders: count, speed: rpm, percent }) => {
    const sparks = sparksAMinute(count, rpm);
    const angle = dwellAngle(count, percent);
    return {
      values: { result: sparks, between: 60_000 / sparks, closed: closedTime(angle, rpm) },
    };
  },
});

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
  work: ({ diameter, angle }) => {
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
