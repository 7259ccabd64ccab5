import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boilingPoint,
  boilingPointFigure,
  coolantFreezes,
  waterFraction,
} from '../../../../src/core/trade/figures/cooling.ts';
import {
  fuelBoilingPoint,
  fuelHead,
  fuelPump,
  idleCo,
  idleLimit,
  needleForce,
  vaporPressure,
} from '../../../../src/core/trade/figures/fuel.ts';
import { lambda, lambdaOf } from '../../../../src/core/trade/figures/lambda.ts';
import {
  exhaustAt,
  lambdaForCo,
  mixture,
  stoichiometric,
} from '../../../../src/core/trade/figures/mixture.ts';
import {
  saturationPressure,
  saturationTemperature,
} from '../../../../src/core/trade/figures/steam.ts';

const gas = { co: 3.5, co2: 12.5, o2: 0.8, hc: 300, no: 0 };
const older = { hydrogen: 1.7261, oxygen: 0.0175 };
const plain = { hydrogen: 1.85, oxygen: 0 };

describe('mixture, fuel and cooling', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['lambda of the worked gas', lambdaOf(gas, older, 6), 0.9254, 4],
    ['iso-octane', stoichiometric({ hydrogen: 2.25, oxygen: 0 }), 15.13, 2],
    ['CO at 0.95', exhaustAt(0.95, plain).co, 1.81, 2],
    ['CO2 at 0.95', exhaustAt(0.95, plain).co2, 14.13, 2],
    ['lambda of 3.5 % CO', lambdaForCo(3.5, plain), 0.905, 3],
    ['lambda of 4.5 % CO', lambdaForCo(4.5, plain), 0.879, 3],
    ['uk limit of 1980', idleLimit('uk', 1980).co, 4.5, 9],
    ['24 in of fuel, psi', fuelHead(24, 0.74), 0.6416, 4],
    ['needle of 0.11 in at 5 psi, lbf', needleForce(0.11, 5), 0.04752, 5],
    ['Reid 10 at 60 F, psia', vaporPressure(10, 60), 5.2, 1],
    ['Reid 9 boils, F', fuelBoilingPoint(9, 0), 126, 0],
    ['water fraction of 50 %', waterFraction(50), 0.7554, 4],
    ['water at 14.696 psi, F', boilingPoint(14.696), 211.95, 2],
    ['50 % freezes, C', coolantFreezes(50), -37, 9],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  // Verification values of IAPWS-IF97 region 4, tables 35 and 36, from memory.
  test.each([
    [300, 0.353658941e-2],
    [500, 2.63889776],
    [600, 12.3443146],
  ])('water at %d K boils at %d MPa', (kelvin, want) => {
    expect(Math.abs(saturationPressure(kelvin) / want - 1)).toBeLessThan(1e-8);
  });

  test.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])('water under %d MPa boils at %d K', (pressure, want) => {
    expect(Math.abs(saturationTemperature(pressure) - want)).toBeLessThan(1e-6);
  });

  test('the two saturation equations undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 273.15, max: 640, noNaN: true }), (kelvin) => {
        const back = saturationTemperature(saturationPressure(kelvin));
        expect(Math.abs(back - kelvin)).toBeLessThan(1e-4);
      }),
      { seed: 97 },
    );
  });

  test('lambda comes back from the gas that it makes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.75, max: 1.4, noNaN: true }), (wanted) => {
        const back = lambdaOf({ ...exhaustAt(wanted, plain), hc: 0, no: 0 }, plain, 6);
        // Above 1 the balance counts air as 3.773 to 1 and the formula needs none of it.
        expect(Math.abs(back - wanted)).toBeLessThan(1e-9);
      }),
      { seed: 14 },
    );
  });

  test('a CO reading tells the lambda first, then an air-fuel ratio', () => {
    const { outputs } = mixture.run({ co: 3.5 });

    expect(Object.keys(outputs)[0]).toBe('result');
    expect(outputs['result']?.value).toBeCloseTo(0.905, 3);
    expect(outputs['airFuel']?.value).toBeCloseTo(13.19, 2);
  });

  test('air leaking into the exhaust is noticed, and a sample too thin is refused', () => {
    expect(lambda.run({ co: 2, co2: 8 }).verdict).toContain('air leaks into the exhaust');
    expect(() => lambda.run({ co: 1, co2: 4 })).toThrow('CO + CO2 5 % is outside 6 to 25 %');
  });

  test.each([
    [{ co: 3.5, co2: 12.5 }, 'Rich.'],
    [{ co: 0.3, co2: 13, o2: 3 }, 'Lean or misfiring.'],
    [{ co: 0.5, co2: 14.8, o2: 0.4 }, 'About right.'],
  ])('a gas of %j is judged', (inputs, words) => {
    expect(lambda.run(inputs).verdict).toContain(words);
  });

  test('the step of 1986 counts from its month', () => {
    const limits = [7, 8].map(
      (month) => idleCo.run({ rule: 'uk', year: 1986, month }).outputs['result']?.value,
    );

    expect(limits).toEqual([4.5, 3.5]);
  });

  test('idle CO is held against the limit', () => {
    expect(idleCo.run({ co: 5 }).verdict).toContain('Over the limit');
    expect(idleCo.run({ co: 4 }).verdict).toContain('Within the limit');
    expect(() => idleCo.run({ rule: 'us', year: 1970 })).toThrow(
      'year 1970 is outside what rule us',
    );
  });

  test.each([
    [2, 'Low pressure'],
    [5, 'Usual pressure'],
    [9, 'may flood'],
  ])('a pump pressure of %d psi is judged', (pressure, words) => {
    expect(fuelPump.run({ pressure }).verdict).toContain(words);
  });

  test('a hot cap is never to be opened, and no temperature is named for it', () => {
    const run = boilingPointFigure.run({ cap: 15, altitude: 5000 });

    expect(run.verdict).toContain('until the top hose is cold to the hand');
    expect(run.verdict).not.toMatch(/\d/);
    expect(run.outputs['rise']?.value).toBeGreaterThan(2);
  });

  test.each([
    ['fuel that never boils in range', () => fuelBoilingPoint(1, -2000), 'there is no answer'],
    ['pure antifreeze', () => coolantFreezes(100), 'glycol 100 % is outside 0 to 60 %'],
    ['no pressure', () => boilingPoint(0), 'pressure 0 psi is outside'],
  ])('%s is refused', (_, run, words) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(words);
  });
});
