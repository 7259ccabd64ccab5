import { measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { showReading } from '../units/units.ts';

const lobes = span('cylinders', 1, 12, '');
const percents = span('percent', 0, 100, '%');
const angles = span('dwell', 0, 360, 'deg');
const speeds = span('speed', 1, 20_000, 'rpm');
const changes = span('change', -30, 30, 'deg');

/**
 * Dwell in distributor degrees from the share of time the points are closed: 360 / lobes x percent
 * / 100. Source: geometry. Worked example: 4 lobes, 60 %: 54 degrees.
 */
export function dwellAngle(cylinders: number, percent: number): number {
  return ((360 / wholeLobes(cylinders)) * inSpan(percent, percents)) / 100;
}

/** The share of time for a dwell. Worked example: 8 lobes, 30 degrees: 66.67 %. */
export function dwellPercent(cylinders: number, angle: number): number {
  const whole = 360 / wholeLobes(cylinders);
  return (100 * inSpan(angle, { ...angles, high: whole })) / whole;
}

/**
 * Milliseconds the points stay closed: 1000 x dwell / (3 x rpm), engine rpm of a four-stroke.
 * Worked example: 30 degrees at 1000 rpm: 10 ms.
 */
export function closedTime(angle: number, rpm: number): number {
  return (1000 * inSpan(angle, angles)) / (3 * inSpan(rpm, speeds));
}

function wholeLobes(cylinders: number): number {
  const count = inSpan(cylinders, lobes);
  if (!Number.isInteger(count)) throw new RangeError(`cylinders ${count} is not a whole number.`);
  return count;
}

/** Usual dwell in degrees: eight published, four and six from memory; others unknown. */
const usualDwell: ReadonlyMap<number, number> = new Map([
  [4, 52],
  [6, 38],
  [8, 30],
]);

/** Average point gap of a training text, in: one blanket figure, never a specification. */
const textGap: ReadonlyMap<number, number> = new Map([
  [4, 0.025],
  [6, 0.025],
  [8, 0.015],
]);

export const dwell = makeFigure({
  name: 'dwell',
  family: 'ignition',
  about: 'Dwell angle, percent and closed time of ignition points.',
  inputs: {
    cylinders: measured('count', lobes, 'lobes of the distributor cam'),
    percent: optional('ratio', percents, 'share of time closed'),
    dwell: optional('angle', angles, 'instead of the percent, distributor degrees'),
    speed: optional('rotation', speeds, 'of the engine'),
    change: optional('angle', changes, 'change of dwell planned'),
  },
  outputs: {
    result: { unit: 'deg', about: 'dwell, distributor degrees' },
    percent: { unit: '%', about: 'share of time closed' },
    open: { unit: 'deg', about: 'open angle, distributor degrees' },
    closedTime: { unit: 'ms', about: 'points closed each time' },
    timingShift: { unit: 'deg', about: 'what the change does to timing, crank degrees' },
    usual: { unit: 'deg', about: 'usual dwell for that many cylinders' },
    gap: { unit: 'in', about: 'average gap of a training text, never a specification' },
  },
  formula: 'degrees = 360 / cylinders x percent / 100; ms = 1000 x degrees / (3 x rpm)',
  range: '1 to 12 lobes, 1 to 20,000 rpm',
  source: 'geometry; usual dwell and gap for eight: US Navy course text; four and six from memory',
  mark: 'computed',
  work: ({ cylinders: count, percent, dwell: given, speed: rpm, change }) => {
    const angle = dwellOf(count, percent, given);
    const usual = usualDwell.get(count);
    return {
      values: {
        result: angle,
        percent: dwellPercent(count, angle),
        open: 360 / count - angle,
        closedTime: rpm === undefined ? undefined : closedTime(angle, rpm),
        timingShift: change === undefined ? undefined : 0 - change,
        usual,
        gap: textGap.get(count),
      },
      verdict: judgeDwell(angle, usual),
    };
  },
});

function dwellOf(cylinders: number, percent?: number, angle?: number): number {
  if (percent !== undefined && angle === undefined) return dwellAngle(cylinders, percent);
  if (angle !== undefined && percent === undefined) return angle;
  throw new RangeError('give either percent or dwell, not both and not neither.');
}

/** Degrees from the usual dwell that settings of sound vehicles keep to: common practice. */
const dwellRoom = 6;

function judgeDwell(angle: number, usual?: number): string {
  const told = usual === undefined ? '' : `${againstUsual(angle, usual)} `;
  return `${told}Set dwell first, timing second: more dwell retards, a degree for a degree. ${ruleOfThumb}`;
}

function againstUsual(angle: number, usual: number): string {
  const about = `about ${showReading(usual, 'deg')} is usual`;
  if (angle > usual + dwellRoom) return `Much dwell, the gap is narrow: ${about}.`;
  if (angle < usual - dwellRoom) return `Little dwell, the gap is wide: ${about}.`;
  return `Near what is usual: ${about}.`;
}

const diameters = span('diameter', 0.5, 40, 'in');
/** Before top; after top is below zero. */
const marks = span('angle', -180, 360, 'deg');

/**
 * Length along the rim of a pulley for so many crank degrees: pi x diameter x degrees / 360.
 * Worked example: 6 in, 10 degrees: 0.5236 in.
 */
export function timingArc(diameter: number, angle: number): number {
  return (Math.PI * inSpan(diameter, diameters) * inSpan(angle, marks)) / 360;
}

export const timingMark = makeFigure({
  name: 'timing-mark',
  family: 'ignition',
  about: 'Where to put a timing mark on a pulley rim.',
  inputs: {
    diameter: measured('length', diameters, 'of the pulley or damper, at the mark'),
    angle: measured('angle', marks, 'crank degrees before top; after top: -5', { default: 1 }),
  },
  outputs: {
    result: { unit: 'in', about: 'along the rim; below 0 on the far side of the top mark' },
    perLength: { unit: 'deg/mm', about: 'degrees a millimetre of rim' },
  },
  formula: 'arc = pi x diameter x degrees / 360',
  range: '0.5 to 40 in, -180 to 360 degrees',
  source: 'geometry',
  mark: 'computed',
  work: ({ diameter, angle }) => ({
    values: { result: timingArc(diameter, angle), perLength: 1 / (timingArc(diameter, 1) * 25.4) },
    verdict: 'A damper whose ring has slipped shows wrong: prove top dead center first.',
  }),
});

const staticTimings = span('static', -40, 60, 'deg');
const curves = span('advance', 0, 30, 'deg');

/**
 * Total advance in crank degrees: static + 2 x centrifugal + 2 x vacuum, the last two in
 * distributor degrees. Worked example: 8, 12, 8: 48.
 */
export function totalAdvance(base: number, centrifugal: number, vacuum: number): number {
  return inSpan(base, staticTimings) + 2 * inSpan(centrifugal, curves) + 2 * inSpan(vacuum, curves);
}

export const sparkTiming = makeFigure({
  name: 'spark-timing',
  family: 'ignition',
  about: 'Total spark advance, firing interval, and degrees a millisecond.',
  inputs: {
    static: measured('angle', staticTimings, 'crank degrees before top', { default: 0 }),
    centrifugal: measured('angle', curves, 'distributor degrees', { default: 0 }),
    vacuum: measured('angle', curves, 'distributor degrees', { default: 0 }),
    cylinders: optional('count', lobes, 'of a four-stroke'),
    speed: optional('rotation', speeds, 'of the engine'),
  },
  outputs: {
    result: { unit: 'deg', about: 'total advance, crank degrees' },
    interval: { unit: 'deg', about: 'between sparks, crank degrees' },
    perTime: { unit: 'deg/ms', about: 'crank degrees a millisecond' },
  },
  formula: 'static + 2 x centrifugal + 2 x vacuum; interval = 720 / cylinders; 6 x rpm / 1000',
  range: '-40 to 60 degrees static, 0 to 30 distributor degrees each',
  source: 'geometry',
  mark: 'computed',
  work: ({ static: base, centrifugal, vacuum, cylinders: count, speed: rpm }) => ({
    values: {
      result: totalAdvance(base, centrifugal, vacuum),
      interval: count === undefined ? undefined : 720 / wholeLobes(count),
      perTime: rpm === undefined ? undefined : (6 * rpm) / 1000,
    },
    verdict: `Set it with the vacuum pipe off unless told otherwise. ${ruleOfThumb}`,
  }),
});
