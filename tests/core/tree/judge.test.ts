import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge } from '../../../src/core/tree/judge.ts';
import { smallTree } from '../../helpers/tree.ts';

const check = smallTree().checks['volts'];
if (check === undefined) throw new Error('the small tree measures volts');

/** The bands of the small tree: 12 or more, 2 to below 12, below 2. */
const volts = (value: number) => check.results[judge(check, value)]?.id;

describe('what a reading is worth', () => {
  test.each([
    [0, 'dead'],
    [1.999, 'dead'],
    [2, 'low'],
    [11.999, 'low'],
    [12, 'full'],
    [16, 'full'],
    [-3, 'dead'],
    [24, 'full'],
  ])('%f V falls in its band, the lower end belonging to it', (value, result) => {
    expect(volts(value)).toBe(result);
  });

  test('a reading that a correction brings to its limit stands on it', () => {
    expect([11.999999999999998, 1.9999999999999998, 11.9999].map(volts)).toEqual([
      'full',
      'low',
      'low',
    ]);
  });

  test('the very top of the range, and what lies beyond, belongs to the band that ends there', () => {
    const results = check.results.map((one) => (one.id === 'full' ? { ...one, below: 16 } : one));

    expect([15.9, 16, 18].map((value) => judge({ ...check, results }, value))).toEqual([0, 0, 0]);
  });

  test('what lies below all bands belongs to the lowest', () => {
    const results = check.results.map((one) => (one.id === 'dead' ? { ...one, from: 0 } : one));

    expect(judge({ ...check, results }, -1)).toBe(2);
  });

  test('where a result is missing on this vehicle, the nearest band has the reading', () => {
    const results = check.results.filter(({ id }) => id !== 'low');

    expect([11, 3].map((value) => results[judge({ ...check, results }, value)]?.id)).toEqual([
      'full',
      'dead',
    ]);
  });

  test('every reading falls in exactly the band that holds it', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), (value) => {
        expect(volts(value)).toBe(value >= 12 ? 'full' : value >= 2 ? 'low' : 'dead');
      }),
      { seed: 43, numRuns: 300 },
    );
  });
});
