import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airPressure } from '../../src/core/trade/figures/air.ts';
import { fuelBoilingPoint, vaporPressure } from '../../src/core/trade/figures/fuel.ts';
import { saturationPressure, saturationTemperature } from '../../src/core/trade/figures/steam.ts';
import { convert } from '../../src/core/trade/units/units.ts';
import { absent, installed, outsideQuantity, outsideRoot, outsideSteam } from './outside.ts';

/** Our units and those of the other library, by quantity; within a line each goes to each. */
const lines: readonly (readonly (readonly [ours: string, theirs: string])[])[] = [
  [
    ['Pa', 'Pa'],
    ['kPa', 'kPa'],
    ['bar', 'bar'],
    ['psi', 'psi'],
    ['inHg', 'inHg'],
    ['mmHg', 'mmHg'],
    ['torr', 'torr'],
    ['atm', 'atm'],
  ],
  [
    ['F', 'tempF'],
    ['C', 'tempC'],
    ['K', 'tempK'],
  ],
  [
    ['in', 'in'],
    ['ft', 'ft'],
    ['yd', 'yd'],
    ['mi', 'mi'],
    ['mm', 'mm'],
    ['km', 'km'],
  ],
  [
    ['l', 'l'],
    ['gal', 'gal'],
    ['qt', 'qt'],
    ['pt', 'pt'],
    ['fl-oz', 'floz'],
    ['in3', 'in^3'],
    ['ft3', 'ft^3'],
  ],
  [
    ['mph', 'mph'],
    ['km/h', 'kph'],
    ['m/s', 'm/s'],
  ],
  [
    ['kg', 'kg'],
    ['lb', 'lb'],
    ['oz', 'oz'],
    ['ton', 'ton'],
  ],
  [
    ['W', 'W'],
    ['kW', 'kW'],
    ['hp', 'hp'],
  ],
  [
    ['J', 'J'],
    ['BTU', 'btu'],
    ['Wh', 'Wh'],
  ],
  [
    ['V', 'V'],
    ['mV', 'mV'],
    ['kV', 'kV'],
  ],
  [
    ['A', 'A'],
    ['mA', 'mA'],
  ],
  [
    ['ohm', 'ohm'],
    ['mohm', 'mohm'],
    ['kohm', 'kohm'],
  ],
  [
    ['N', 'N'],
    ['lbf', 'lbf'],
  ],
  [
    ['Nm', 'N*m'],
    ['ft-lb', 'ft*lbf'],
    ['in-lb', 'in*lbf'],
  ],
  [
    ['rpm', 'rpm'],
    ['rad/s', 'rad/s'],
  ],
  [
    ['deg', 'deg'],
    ['rad', 'rad'],
  ],
  [
    ['Ah', 'Ah'],
    ['C', 'C'],
  ],
];
const pairs = lines.flatMap((line) => line.flatMap((from) => line.map((to) => ({ from, to }))));

// The other library holds some factors to six digits only (psi 6894.76, mmHg 133.322368).
const sixDigits = 2e-6;

describe.skipIf(!installed)(`against libraries by other hands (skipped only if ${absent})`, () => {
  test('every unit that a unit library knows converts as it does there', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...pairs),
        fc.double({ min: 1, max: 1000, noNaN: true }),
        ({ from, to }, value) => {
          const ours = convert(value, from[0], to[0]);
          const theirs = outsideQuantity(value, from[1]).to(to[1]).scalar;
          const size = to[1].startsWith('temp') ? 300 : Math.abs(theirs);
          expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(sixDigits * size);
        },
      ),
      { seed: 811, numRuns: 3000 },
    );
  });

  test('water boils as in a steam library, both ways', () => {
    const steam = outsideSteam();

    fc.assert(
      fc.property(fc.double({ min: 273.16, max: 620, noNaN: true }), (kelvin) => {
        const pressure = steam.r4_T_Psat(kelvin);
        expect(Math.abs(saturationPressure(kelvin) / pressure - 1)).toBeLessThan(1e-7);
        const back = saturationTemperature(pressure) - steam.r4_P_Tsat(pressure);
        expect(Math.abs(back)).toBeLessThan(1e-5);
      }),
      { seed: 97, numRuns: 500 },
    );
  });

  test('fuel boils where Newton says its vapor pressure is that of the air', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 6, max: 14, noNaN: true }),
        fc.double({ min: 0, max: 12_000, noNaN: true }),
        (reid, feet) => {
          const air = convert(airPressure(feet), 'kPa', 'psi');
          const root = outsideRoot((at) => vaporPressure(reid, at) - air, 110);
          expect(Math.abs(fuelBoilingPoint(reid, feet) - Number(root))).toBeLessThan(1e-6);
        },
      ),
      { seed: 42, numRuns: 200 },
    );
  });
});
