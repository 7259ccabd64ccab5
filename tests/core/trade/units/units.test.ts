import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { quantities, quantityNames } from '../../../../src/core/trade/units/quantities.ts';
import {
  convert,
  findUnit,
  quantitiesOf,
  showReading,
  unitNames,
} from '../../../../src/core/trade/units/units.ts';

describe('converting units', () => {
  // NIST SP 811 appendix B factors, seven digits, as the project's reference list gives them.
  test.each([
    ['inch of mercury, conventional', 'inHg', 3386.389],
    ['millimetre of mercury', 'mmHg', 133.3224],
    ['inch of water, conventional', 'inH2O', 249.0889],
    ['pound-force per square inch', 'psi', 6894.757],
    ['bar', 'bar', 100_000],
    ['standard atmosphere', 'atm', 101_325],
  ])('one %s is the published number of pascals', (_, from, want) => {
    const got = convert(1, from, 'Pa');

    expect(Math.abs(got / want - 1)).toBeLessThanOrEqual(1e-7);
  });

  test.each([
    ['freezing', convert(32, 'F', 'C'), 0],
    ['boiling', convert(212, 'F', 'C'), 100],
    ['where the scales meet', convert(-40, 'C', 'F'), -40],
    ['absolute zero', convert(0, 'K', 'C'), -273.15],
    ['an inch in mm', convert(1, 'in', 'mm'), 25.4],
    ['a mile per hour in km/h', convert(1, 'mph', 'km/h'), 1.609344],
    ['a US gallon in cubic inches', convert(1, 'gal', 'in3'), 231],
    ['an imperial pint in litres', convert(1, 'imp-pt', 'l'), 0.56826125],
    ['a foot-pound in Nm', convert(1, 'ft-lb', 'Nm'), 1.35581795],
    ['a metric horsepower in watts', convert(1, 'PS', 'W'), 735.49875],
    ['an hour of one ampere', convert(3600, 'C', 'Ah'), 1],
    // NIST SP 811: divide 235.2146 by the miles per gallon.
    ['25 US mpg in l/100km', convert(25, 'mpg', 'l/100km'), 9.40858333],
  ])('%s is exact', (_, got, want) => {
    expect(got).toBeCloseTo(want, 8);
  });

  test.each([
    ['a unit nobody knows', () => convert(1, 'cubit', 'm'), 'unit "cubit" is not known'],
    ['a target nobody knows', () => convert(1, 'm', 'cubit'), 'unit "cubit" is not known'],
    ['different quantities', () => convert(1, 'V', 'psi'), 'unit "V" measures voltage'],
    ['not a number', () => convert(Number.NaN, 'V', 'mV'), 'value NaN V is not a number'],
    ['colder than can be', () => convert(-500, 'F', 'C'), 'below absolute zero'],
    ['no miles per gallon at all', () => convert(0, 'mpg', 'l/100km'), 'cannot be told in l/100km'],
  ])('%s is refused and named', (_, run, words) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(words);
  });

  test('every unit of every quantity converts there and back', () => {
    const pairs = quantityNames.flatMap((name) =>
      unitNames(name).flatMap((from) => unitNames(name).map((to) => ({ from, to }))),
    );

    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        ({ from, to }, value) => {
          const back = convert(convert(value, from, to), to, from);
          // Temperatures pass through kelvin, so their error is that of a few hundred kelvin.
          expect(Math.abs(back - value)).toBeLessThanOrEqual(1e-12 * (Math.abs(value) + 1000));
        },
      ),
      { seed: 811, numRuns: 2000 },
    );
  });
});

describe('naming units', () => {
  test.each([
    ['°F', 'temperature', 'F'],
    ['deg F', 'temperature', 'F'],
    ['volts', 'voltage', 'V'],
    ['Ω', 'resistance', 'ohm'],
    ['mΩ', 'resistance', 'mohm'],
    ['µF', 'capacitance', 'uF'],
    ['"', 'length', 'in'],
    ["'", 'length', 'ft'],
    ['inches', 'vacuum', 'inHg'],
    ['in. Hg.', 'vacuum', 'inHg'],
    ['PSI', 'pressure', 'psi'],
    ['MOHM', 'resistance', undefined],
    ['mm²', 'area', 'mm2'],
    ['US gal', 'volume', 'gal'],
    ['AH', 'charge', 'Ah'],
  ] as const)('%s as a %s is %s', (text, quantity, want) => {
    expect(findUnit(quantity, text)?.id).toBe(want);
  });

  test('no two units of a quantity share a spelling', () => {
    const doubled = quantityNames.flatMap((name) =>
      quantities[name].units
        .flatMap((row) => [row.id, ...row.aliases])
        .filter((text, place, all) => all.indexOf(text) !== place)
        .map((text) => `${name}: ${text}`),
    );

    expect(doubled).toEqual([]);
  });

  test('F is a temperature before it is a capacitance', () => {
    expect(quantitiesOf('F')).toEqual(['temperature', 'capacitance']);
  });
});

describe('showing a reading', () => {
  test.each([
    [12.4349, 'V', '12.43 V'],
    [12, 'V', '12 V'],
    [0.0042, 'V', '0.0042 V'],
    [18.26, 'inHg', '18.3 inHg'],
    [0.034, 'in', '0.034 in'],
    [1249.6, 'rpm', '1250 rpm'],
    [0.98349, '1', '0.9835'],
    [-0, 'C', '0 C'],
    [-0.04, 'C', '-0.04 C'],
    [105_530, 'cmil', '105530 cmil'],
    [3, 'furlong', '3 furlong'],
  ])('%d %s shows as %s', (value, unit, want) => {
    expect(showReading(value, unit)).toBe(want);
  });

  test('what is not a number is never shown', () => {
    expect(() => showReading(Number.NaN, 'V')).toThrow(RangeError);
  });
});
