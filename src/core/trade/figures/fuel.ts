import { airPressure, altitudes } from './air.ts';
import { chosen, measured, optional, ruleOfThumb } from '../figure-words.ts';
import { withoutDust } from '../dust.ts';
import { makeFigure } from '../figure.ts';
import { crossing } from '../root.ts';
import { inSpan, span } from '../span.ts';
import { convert } from '../units/units.ts';

const reids = span('vapor pressure', 1, 20, 'psi');
const fuelHeats = span('temperature', -20, 250, 'F');
const fuelVolumes = span('volume', 0, 100, 'l');
const times = span('time', 0.1, 3600, 's');
const pumpPressures = span('pressure', 0, 100, 'psi');

/** Idle CO limits in percent and HC in ppm, by rule and first year of use (with month / 12). */
type IdleLimit = {
  readonly rule: string;
  readonly from: number;
  readonly to: number;
  readonly co: number;
  readonly hc?: number;
};

// uk: SI 2001/25 schedule 3. eu: Directive 2009/40/EC, from memory; a national text was read.
// us: 40 CFR 85.2203. us-state: idle short test limits of one state, read in a copy.
const idleLimits: readonly IdleLimit[] = [
  { rule: 'uk', from: 1900, to: 1986 + 7 / 12, co: 4.5 },
  { rule: 'uk', from: 1986 + 7 / 12, to: 1993, co: 3.5 },
  { rule: 'eu', from: 1900, to: 1986 + 9 / 12, co: 4.5 },
  { rule: 'eu', from: 1986 + 9 / 12, to: 1993, co: 3.5 },
  { rule: 'us', from: 1981, to: 1996, co: 1.2, hc: 220 },
  { rule: 'us-state', from: 1900, to: 1971, co: 3.5, hc: 1000 },
  { rule: 'us-state', from: 1971, to: 1975, co: 3, hc: 1000 },
  { rule: 'us-state', from: 1975, to: 1977, co: 2, hc: 600 },
  { rule: 'us-state', from: 1977, to: 1978, co: 1.5 },
];

const rules = ['uk', 'eu', 'us', 'us-state'] as const;

/**
 * The idle limit that a rule sets for a year of first use (1986.58 is August 1986). RangeError for
 * years the rule does not cover here. Worked example: uk, 1980: 4.5 %.
 */
export function idleLimit(rule: string, year: number): IdleLimit {
  const found = idleLimits.find(
    (each) => each.rule === rule && year >= each.from && year < each.to,
  );
  if (found === undefined)
    throw new RangeError(`year ${year} is outside what rule ${rule} covers.`);
  return found;
}

export const idleCo = makeFigure({
  name: 'idle-co',
  family: 'fuel',
  about: 'Idle CO and HC limits by rule and year.',
  inputs: {
    rule: chosen(rules, 'whose rule', 'uk'),
    year: measured('count', span('year', 1900, 1996, ''), 'of first use', { default: 1970 }),
    month: measured('count', span('month', 1, 12, ''), 'of first use', { default: 1 }),
    co: optional('ratio', span('CO', 0, 20, '%'), 'read at idle'),
  },
  outputs: {
    result: { unit: '%', about: 'CO limit' },
    hc: { unit: 'ppm', about: 'HC limit, as hexane' },
    dilution: { unit: '%', about: 'a sample with less CO + CO2 is void' },
  },
  formula: 'table by rule and year',
  range: 'first use 1900 to 1992 (uk, eu), 1981 to 1995 (us), to 1977 (us-state)',
  source:
    'UK SI 2001/25 schedule 3; EU 2009/40/EC, from memory; 40 CFR 85.2203 and 85.2213; state rule',
  mark: 'published',
  work: ({ co, rule, year, month }) => {
    const limit = idleLimit(rule, year + (month - 1) / 12);
    const word = co === undefined ? '' : co > limit.co ? 'Over the limit. ' : 'Within the limit. ';
    return {
      values: { result: limit.co, hc: limit.hc, dilution: 6 },
      verdict: `${word}The vehicle's own setting and today's local rule come first.`,
    };
  },
});

/** Common static pressure of a mechanical pump, psi: common practice. */
const pumpBand = { low: 4, high: 7 } as const;

export const fuelPump = makeFigure({
  name: 'fuel-pump',
  family: 'fuel',
  about: 'Flow of a fuel pump from a volume and a time, and its usual pressure.',
  inputs: {
    volume: measured('volume', fuelVolumes, 'pumped', {
      default: withoutDust(convert(1, 'pt', 'l')),
    }),
    time: measured('time', times, 'it took', { default: 30 }),
    pressure: optional('pressure', pumpPressures, 'read, no flow'),
  },
  outputs: {
    result: { unit: 'l/min', about: 'flow' },
    wanted: { unit: 'l/min', about: 'one US pint in 30 s, a common test' },
    low: { unit: 'psi', about: 'lower end of the common band' },
    high: { unit: 'psi', about: 'upper end of the common band' },
  },
  formula: 'flow = volume / time',
  range: '0 to 100 l, 0.1 to 3600 s',
  source: 'common practice, no source',
  mark: 'common practice',
  work: ({ pressure, volume, time }) => {
    const flow = (volume / time) * 60;
    return {
      values: { result: flow, wanted: convert(2, 'pt/min', 'l/min'), ...pumpBand },
      verdict: `${judgePump(pressure)}Catch fuel in a closed can, no flame or spark. ${ruleOfThumb}`,
    };
  },
});

function judgePump(pressure?: number): string {
  if (pressure === undefined) return '';
  if (pressure < pumpBand.low) return 'Low pressure. ';
  return pressure > pumpBand.high ? 'High pressure, may flood. ' : 'Usual pressure. ';
}

/** psi of a column of fuel, density x g x height. Worked example: 24 in, 0.74: 0.6416 psi. */
export function fuelHead(height: number, gravity: number): number {
  const metres = convert(inSpan(height, span('height', 0, 400, 'in')), 'in', 'm');
  const density = inSpan(gravity, span('gravity', 0.5, 1.2, '')) * 1000;
  return convert(density * 9.80665 * metres, 'Pa', 'psi');
}

export const fuelHeadFigure = makeFigure({
  name: 'fuel-head',
  family: 'fuel',
  about: 'Pressure of a column of fuel: gravity tanks, and how far a pump must lift.',
  inputs: {
    height: measured('length', span('height', 0, 400, 'in'), 'of the column'),
    gravity: measured('gravity', span('gravity', 0.5, 1.2, ''), 'of the fuel', { default: 0.74 }),
  },
  outputs: { result: { unit: 'psi', about: 'pressure' } },
  formula: 'density x 9.80665 x height',
  range: '0 to 400 in, specific gravity 0.5 to 1.2',
  source: 'hydrostatics; 0.74 from memory',
  mark: 'computed',
  work: ({ height, gravity }) => ({
    values: { result: fuelHead(height, gravity) },
  }),
});

/** Pounds-force on a float needle, pressure x pi d^2 / 4. Worked example: 0.11 in, 5 psi: 0.04752. */
export function needleForce(diameter: number, pressure: number): number {
  const inches = inSpan(diameter, span('diameter', 0.01, 1, 'in'));
  return (inSpan(pressure, pumpPressures) * Math.PI * inches ** 2) / 4;
}

export const needleForceFigure = makeFigure({
  name: 'needle-force',
  family: 'fuel',
  about: 'Force with which fuel pressure lifts the float needle off its seat.',
  inputs: {
    diameter: measured('length', span('diameter', 0.01, 1, 'in'), 'of the seat'),
    pressure: measured('pressure', pumpPressures, 'of the fuel'),
  },
  outputs: { result: { unit: 'lbf', about: 'force' } },
  formula: 'pressure x pi x diameter^2 / 4',
  range: '0.01 to 1 in, 0 to 100 psi',
  source: 'hydrostatics',
  mark: 'computed',
  work: ({ diameter, pressure }) => ({
    values: { result: needleForce(diameter, pressure) },
    verdict: 'More pressure than the float can hold floods the bowl.',
  }),
});

/**
 * True vapor pressure in psia of gasoline of a Reid pressure at a temperature in F, distillation
 * slope 3. Valid for 1 to 20 psi, -20 to 250 F. Source: EPA AP-42 chapter 7, from memory. Worked
 * example: Reid 10 at 60 F: 5.2 psia.
 */
export function vaporPressure(reid: number, temperature: number): number {
  // 459.6 and not 459.67: the equation's constants were fitted with it.
  const rankine = inSpan(temperature, fuelHeats) + 459.6;
  const log = Math.log10(inSpan(reid, reids));
  const slope = Math.sqrt(3);
  return Math.exp(
    (0.7553 - 413 / rankine) * slope * log -
      (1.854 - 1042 / rankine) * slope +
      (2416 / rankine - 2.013) * log -
      8742 / rankine +
      15.64,
  );
}

/** F at which such fuel boils in an open bowl at an altitude. Worked example: Reid 9, 0 ft: 126. */
export function fuelBoilingPoint(reid: number, feet: number): number {
  const air = convert(airPressure(feet), 'kPa', 'psi');
  return crossing((at) => vaporPressure(reid, at) - air, fuelHeats.low, fuelHeats.high);
}

const reid = measured('pressure', reids, 'Reid: about 9 in summer, 13.5 in winter');
const vaporSource = 'EPA AP-42 chapter 7, distillation slope 3, from memory';

export const fuelVapor = makeFigure({
  name: 'fuel-vapor',
  family: 'fuel',
  about: 'True vapor pressure of gasoline at a temperature.',
  inputs: { reid, temperature: measured('temperature', fuelHeats, 'of the fuel') },
  outputs: { result: { unit: 'psi', about: 'absolute vapor pressure' } },
  formula: 'AP-42 equation, slope 3',
  range: 'Reid 1 to 20 psi, -20 to 250 F',
  source: vaporSource,
  mark: 'from memory',
  work: ({ reid, temperature }) => ({
    values: { result: vaporPressure(reid, temperature) },
  }),
});

export const fuelBoiling = makeFigure({
  name: 'fuel-boiling',
  family: 'fuel',
  about: 'Temperature at which fuel boils in an open float bowl.',
  inputs: { reid, altitude: measured('length', altitudes, 'above sea level', { default: 0 }) },
  outputs: { result: { unit: 'F', about: 'boils' } },
  formula: 'vapor pressure = air pressure',
  range: 'Reid 1 to 20 psi, answers of -20 to 250 F',
  source: `${vaporSource}; US Standard Atmosphere 1976`,
  mark: 'from memory',
  work: ({ reid, altitude }) => ({
    values: { result: fuelBoilingPoint(reid, altitude) },
    verdict: 'A bowl hotter than this percolates after a hot stop: hard hot start, strong smell.',
  }),
});
