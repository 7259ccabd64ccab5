import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Check } from '../../../src/core/tree/model.ts';
import { combined, readingsWanted, type Several } from '../../../src/core/tree/several.ts';
import { smallTree } from '../../helpers/tree.ts';

const volts = { quantity: 'voltage', unit: 'V', plausible: [0, 16] as [number, number] } as const;
const psi = { quantity: 'pressure', unit: 'psi', plausible: [0, 250] as [number, number] } as const;
const percent = { quantity: 'ratio', unit: '%', plausible: [0, 100] as [number, number] } as const;

const several = (judge: string, change: Partial<Several> = {}): Several => ({
  judge,
  reading: volts,
  readings: [
    { ...volts, name: 'post' },
    { ...volts, name: 'station' },
  ],
  ...change,
});
const cylinders = (judge: string, reading: Several['reading']): Several =>
  several(judge, { reading, readings: [{ ...psi, name: 'cylinder' }] });

const near = (value: number) => expect.closeTo(value, 9) as unknown as number;

describe('several readings as one, worked out by hand', () => {
  test('a difference is the first less the second; only the fixed error of the meter stays, twice', () => {
    // 12.55 - 12.30 = 0.25 V; 2 x 0.005 V + 0.8 % of 0.25 V = 0.012 V.
    expect(combined(several('difference'), [12.55, 12.3])).toEqual([
      { value: near(0.25), low: near(0.238), high: near(0.262) },
    ]);
    expect(combined(several('difference'), [12.3, 12.55])[0]?.value).toBeCloseTo(-0.25, 9);
  });

  test('the error that a check gives counts: of what is judged, or else twice that of a reading', () => {
    const reading = { ...volts, uncertainty: 0.05 };
    const readings: Several['readings'] = [{ ...volts, name: 'post', uncertainty: 0.02 }];

    expect(combined(several('difference', { reading }), [12, 11])).toEqual([
      { value: 1, low: 0.95, high: 1.05 },
    ]);
    expect(combined(several('difference', { readings }), [12, 11])).toEqual([
      { value: 1, low: 0.96, high: 1.04 },
    ]);
  });

  test('a spread is the highest less the lowest, wherever they stand', () => {
    // 160 - 118 = 42 psi; 2 x 0.25 psi + 2 % of 42 psi = 1.34 psi.
    expect(combined(cylinders('spread', psi), [150, 118, 160, 155])).toEqual([
      { value: 42, low: near(40.66), high: near(43.34) },
    ]);
  });

  test('the lowest has the error of one reading', () => {
    // 0.25 psi + 2 % of 118 psi = 2.61 psi.
    expect(combined(cylinders('lowest', psi), [150, 118, 160])).toEqual([
      { value: 118, low: near(115.39), high: near(120.61) },
    ]);
  });

  test('each stays for itself', () => {
    expect(combined(cylinders('each', psi), [150, 118]).map(({ value }) => value)).toEqual([
      150, 118,
    ]);
  });

  test('a share is the lowest in percent of the highest', () => {
    // 120 of 160 psi; with 0.25 psi of error at most either way 119.75 of 160.25, 120.25 of 159.75.
    expect(combined(cylinders('share', percent), [150, 120, 160])).toEqual([
      { value: 75, low: near((100 * 119.75) / 160.25), high: near((100 * 120.25) / 159.75) },
    ]);
    expect(combined(cylinders('share', percent), [160, 160])[0]?.high).toBe(100);
  });

  test('a figure that takes a list gives its result', () => {
    // compression-spread: (160 - 120) / 160 = 25 %; a ratio is off by 0.2 % + 3 % of 25 % = 0.95 %.
    expect(combined(cylinders('compression-spread', percent), [150, 120, 160])).toEqual([
      { value: 25, low: near(24.05), high: near(25.95) },
    ]);
  });

  test('they are judged in the unit of the check', () => {
    const millivolts = { ...volts, unit: 'mV' };

    expect(
      combined(several('spread', { reading: millivolts }), [12.5, 12.3])[0]?.value,
    ).toBeCloseTo(200, 6);
  });
});

test('what lies beyond the range of a meter is larger than all; two such cannot be compared', () => {
  expect(combined(several('difference'), [Infinity, 3])[0]?.value).toBe(Infinity);
  expect(combined(several('lowest'), [Infinity, 3])[0]?.value).toBe(3);
  expect(() => combined(several('difference'), [Infinity, Infinity])).toThrow(RangeError);
  expect(() => combined(cylinders('share', percent), [0, 0])).toThrow(RangeError);
  expect(() => combined(cylinders('compression-spread', percent), [Infinity, 3])).toThrow(
    RangeError,
  );
});

test('one a cylinder is as many as the vehicle has; unknown where nobody knows', () => {
  const check = { ...smallTree().checks['volts'], each: 'cylinder', readings: [{}] } as Check;

  expect(
    ['four', 'six', 'eight'].map((value) => readingsWanted(check, { cylinders: value })),
  ).toEqual([4, 6, 8]);
  expect(readingsWanted(check, {})).toBeUndefined();
  expect(readingsWanted({ ...check, each: undefined, readings: [{}, {}] } as Check, {})).toBe(2);
});

test('the order of the readings tells only where the first is less the second', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 20, max: 200, noNaN: true }), { minLength: 2, maxLength: 8 }),
      fc.constantFrom('spread', 'lowest', 'share', 'compression-spread'),
      (values, judge) => {
        const reading = ['spread', 'lowest'].includes(judge) ? psi : percent;
        const way = cylinders(judge, reading);

        expect(combined(way, values.toReversed())).toEqual(combined(way, values));
        const [{ value, low, high } = { value: 0, low: 1, high: -1 }] = combined(way, values);
        expect(low <= value && value <= high).toBe(true);
      },
    ),
    { seed: 9, numRuns: 200 },
  );
});
