import { measured, ruleOfThumb } from '../figure-words.ts';
import { makeFigure } from '../figure.ts';
import { inSpan, span } from '../span.ts';
import { convert } from '../units/units.ts';

const pulleys = span('diameter', 0.5, 40, 'in');
const speeds = span('speed', 0, 20_000, 'rpm');

/**
 * Speed of a driven pulley in rpm: rpm x driving / driven diameter. A V-belt slips 1 to 3 % more
 * (common practice). Source: geometry. Worked example: 700 rpm, 6 in to 2.5 in: 1680 rpm.
 */
export function drivenSpeed(rpm: number, driving: number, driven: number): number {
  return (inSpan(rpm, speeds) * inSpan(driving, pulleys)) / inSpan(driven, pulleys);
}

export const pulleyRatio = makeFigure({
  name: 'pulley-ratio',
  family: 'charging',
  about: 'Speed of a generator, pump or fan from the pulleys.',
  inputs: {
    speed: measured('rotation', speeds, 'of the engine', { default: 700 }),
    driving: measured('length', pulleys, 'pulley on the crankshaft, where the belt runs'),
    driven: measured('length', pulleys, 'pulley on the driven part, where the belt runs'),
  },
  outputs: {
    result: { unit: 'rpm', about: 'speed of the driven part' },
    ratio: { unit: '1', about: 'turns of it for one of the engine' },
  },
  formula: 'rpm x driving / driven',
  range: '0 to 20,000 rpm, 0.5 to 40 in',
  source: 'geometry; a V-belt slips 1 to 3 % (common practice)',
  mark: 'computed',
  work: ({ driving, driven, speed }) => ({
    values: { result: drivenSpeed(speed, driving, driven), ratio: driving / driven },
    verdict: `A generator gives little below about 1000 rpm of its own. ${ruleOfThumb}`,
  }),
});

const ways = span('distance', 0.1, 100_000, 'mi');
const fuels = span('fuel', 0.01, 10_000, 'gal');

/**
 * Miles to the US gallon. Valid for 0.1 to 100,000 miles, 0.01 to 10,000 gallons. Worked example:
 * 235.2146 miles on 10 gallons: 23.52, which is 10 l/100km (factor from NIST SP 811).
 */
export function milesAGallon(distance: number, fuel: number): number {
  return inSpan(distance, ways) / inSpan(fuel, fuels);
}

export const fuelUse = makeFigure({
  name: 'fuel-use',
  family: 'fuel',
  about: 'Fuel used over a distance, told three ways.',
  inputs: {
    distance: measured('length', ways, 'driven, from full tank to full tank'),
    fuel: measured('volume', fuels, 'filled up again'),
  },
  outputs: {
    result: { unit: 'mpg', about: 'miles to the US gallon' },
    metric: { unit: 'l/100km', about: 'litres for 100 km' },
    imperial: { unit: 'imp-mpg', about: 'miles to the imperial gallon' },
  },
  formula: 'distance / fuel',
  range: '0.1 to 100,000 mi, 0.01 to 10,000 gal',
  source: 'definition; gallons from NIST SP 811',
  mark: 'computed',
  work: ({ distance, fuel }) => {
    const found = milesAGallon(distance, fuel);
    return {
      values: {
        result: found,
        metric: convert(found, 'mpg', 'l/100km'),
        imperial: convert(found, 'mpg', 'imp-mpg'),
      },
      verdict: 'One tank tells little: take three, and mind a speedometer that is off.',
    };
  },
});
