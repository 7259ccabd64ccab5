import { airPressure, altitudes, densityRatio } from './air.ts';
import { generalTable, measured, optional, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { asShown, convert, showReading } from '../units/units.ts';

const ratios = span('compression ratio', 1, 30, '');
const exponents = span('exponent', 1, 1.4, '');
const pressures = span('pressure', 0, 1500, 'psi');
const airs = span('air pressure', 1, 20, 'psi');

/**
 * Gauge pressure in psi at the end of an ideal compression: p x (ratio^n - 1), p the air pressure
 * in psi. Valid for ratios 1 to 30 and n 1 to 1.4 (1.2 to 1.3 in practice; the ratio from the
 * closing of the inlet, so real readings are lower). Source: polytropic law. Worked example:
 * ratio 9, n 1.3, 14.7 psi: 241.06 psi.
 */
export function crankingPressure(ratio: number, exponent: number, air: number): number {
  return inSpan(air, airs) * (inSpan(ratio, ratios) ** inSpan(exponent, exponents) - 1);
}

export const crankingCompression = makeFigure({
  name: 'cranking-compression',
  family: 'compression',
  about: 'Ideal reading of a compression gauge; tests whether a reading can be, never a pass mark.',
  inputs: {
    ratio: measured('ratio', ratios, 'compression ratio'),
    exponent: measured('ratio', exponents, '1.2 to 1.3 in practice', { default: 1.2 }),
    altitude: measured('length', altitudes, 'above sea level', { default: 0 }),
    air: optional('pressure', airs, 'absolute, instead of the altitude'),
  },
  outputs: {
    result: { unit: 'psi', about: 'gauge pressure' },
    absolute: { unit: 'psi', about: 'absolute pressure' },
  },
  formula: 'p x (ratio^n - 1)',
  range: 'ratio 1 to 30, n 1 to 1.4, -2000 to 36,000 ft',
  source: 'polytropic law; US Standard Atmosphere 1976',
  mark: 'computed',
  work: ({ ratio, exponent, altitude, air: given }) => {
    const air = given ?? convert(airPressure(altitude), 'kPa', 'psi');
    const gauge = crankingPressure(ratio, exponent, air);
    return {
      values: { result: gauge, absolute: gauge + air },
      verdict: `A sound engine reads well under this; compare its cylinders. ${ruleOfThumb}`,
    };
  },
});

export const compressionAtAltitude = makeFigure({
  name: 'compression-at-altitude',
  family: 'compression',
  about: 'A compression reading or limit moved from one altitude to another.',
  inputs: {
    reading: measured('pressure', pressures, 'gauge reading or limit'),
    from: measured('length', altitudes, 'where that holds', { default: 0 }),
    altitude: measured('length', altitudes, 'where it is wanted', { default: 0 }),
    density: optional('ratio', span('density ratio', 0.1, 2, ''), 'instead, if a table gives it'),
  },
  outputs: {
    result: { unit: 'psi', about: 'by air pressure, as the trees judge it' },
    byDensity: { unit: 'psi', about: 'by air density, as trade tables have it' },
    densityFactor: { unit: '1', about: 'density there over density here' },
    pressureFactor: { unit: '1', about: 'pressure there over pressure here' },
  },
  formula: 'reading x pressure ratio; trade tables: reading x density ratio',
  range: '-2000 to 36,000 ft',
  source: 'US Standard Atmosphere 1976; US Army TM 5-3895-359-14&P scales by density',
  mark: 'computed',
  work: ({ reading, from: here, altitude: there, density: told }) => {
    const density = told ?? densityRatio(there) / densityRatio(here);
    const pressure = airPressure(there) / airPressure(here);
    return {
      values: {
        result: reading * pressure,
        byDensity: reading * density,
        densityFactor: density,
        pressureFactor: pressure,
      },
      verdict: `The cylinders draw thinner air: a gauge goes with its pressure. Tables by density ask a little more. ${generalTable}`,
    };
  },
});

/**
 * Spread of compression readings: largest less smallest, in percent of the largest. RangeError for
 * none, or none above zero. Worked example: 160, 150, 120, 155: 25 %.
 */
export function spreadOf(readings: readonly number[]): number {
  const best = bestOf(readings);
  return (100 * (best - Math.min(...readings))) / best;
}

function bestOf(readings: readonly number[]): number {
  const best = Math.max(...readings.map((each) => inSpan(each, pressures)));
  if (!(best > 0) || !Number.isFinite(best)) throw new RangeError('readings: none is above 0 psi.');
  return best;
}

export const compressionSpread = makeFigure({
  name: 'compression-spread',
  family: 'compression',
  about: 'Compression of all cylinders compared, dry and wet.',
  inputs: {
    readings: measured('pressure', pressures, 'one a cylinder, dry', { list: true }),
    wet: measured('pressure', pressures, 'the same with a spoonful of oil', {
      list: true,
      optional: true,
    }),
  },
  outputs: {
    result: { unit: '%', about: 'largest less smallest, of the largest' },
    floor: { unit: 'psi', about: '75 % of the best' },
    floorOfMean: { unit: 'psi', about: '80 % of the mean' },
    mean: { unit: 'psi', about: 'mean of the cylinders' },
    wetRise: { unit: 'psi', about: 'rise of the lowest cylinder when wet' },
  },
  formula: '100 x (largest - smallest) / largest; 0.75 x largest; 0.8 x mean',
  range: '0 to 1500 psi, warm, throttle open, all plugs out, battery charged',
  source: '75 % common practice; 80 % of the mean US Army TM 1-1500-204-23-1',
  mark: 'common practice',
  work: ({ readings, wet }) => {
    if (wet.length > 0 && wet.length !== readings.length)
      throw new RangeError(`readings wet are ${wet.length}, dry ${readings.length}: give as many.`);
    const mean = readings.reduce((sum, each) => sum + each, 0) / readings.length;
    const floor = 0.75 * bestOf(readings);
    const lowest = Math.min(...readings);
    const weakest = readings.indexOf(lowest);
    const wetted = wet[weakest];
    const rise = wetted === undefined ? undefined : wetted - lowest;
    const low = asShown(lowest, 'psi') < asShown(floor, 'psi');
    return {
      values: {
        result: spreadOf(readings),
        floor,
        floorOfMean: 0.8 * mean,
        mean,
        wetRise: rise,
      },
      verdict:
        readings.length === 1
          ? `One cylinder alone tells little: read them all. ${ruleOfThumb}`
          : judgeSpread({ low, weakest: weakest + 1, floor, rise }),
    };
  },
});

type Weakest = {
  readonly low: boolean;
  readonly weakest: number;
  readonly floor: number;
  readonly rise: number | undefined;
};

function judgeSpread({ low, weakest, floor, rise }: Weakest): string {
  const against = showReading(floor, 'psi');
  if (!low) return `All cylinders are above ${against}, 75 % of the best. ${ruleOfThumb}`;
  const found = `Cylinder ${weakest} is below ${against}, 75 % of the best.`;
  if (rise === undefined) return `${found} Repeat it wet. ${ruleOfThumb}`;
  const leans = rise > 10 ? 'rings or bore' : 'a valve, the head gasket or the piston';
  return `${found} Wet it changed by ${showReading(rise, 'psi')}: leans to ${leans}. ${ruleOfThumb}`;
}

const sizes = span('size', 0.1, 12, 'in');

/**
 * Swept volume in cubic inches: pi / 4 x bore^2 x stroke x cylinders. Worked example: 4 in,
 * 3.5 in, 8: 351.9.
 */
export function sweptVolume(bore: number, stroke: number, cylinders: number): number {
  const each = (Math.PI / 4) * inSpan(bore, sizes) ** 2 * inSpan(stroke, sizes);
  return each * inSpan(cylinders, span('cylinders', 1, 24, ''));
}

export const displacement = makeFigure({
  name: 'displacement',
  family: 'compression',
  about: 'Swept volume of an engine.',
  inputs: {
    bore: measured('length', sizes, 'diameter of a cylinder'),
    stroke: measured('length', sizes, 'travel of a piston'),
    cylinders: measured('count', span('cylinders', 1, 24, ''), 'how many'),
  },
  outputs: { result: { unit: 'in3', about: 'swept volume' } },
  formula: 'pi / 4 x bore^2 x stroke x cylinders',
  range: '0.1 to 12 in, 1 to 24 cylinders',
  source: 'geometry',
  mark: 'computed',
  work: ({ bore, stroke, cylinders }) => ({
    values: { result: sweptVolume(bore, stroke, cylinders) },
  }),
});
