import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandOf, judge, measured } from '../../../src/core/tree/judge.ts';
import { smallTree } from '../../helpers/tree.ts';

const check = smallTree().checks['volts'];
if (check === undefined) throw new Error('the small tree measures volts');

/** The bands of the small tree: 12 or more, 2 to below 12, below 2. */
const volts = (value: number) => check.results[bandOf(check, value)]?.id;

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

    expect([15.9, 16, 18].map((value) => bandOf({ ...check, results }, value))).toEqual([0, 0, 0]);
  });

  test('what lies below all bands belongs to the lowest', () => {
    const results = check.results.map((one) => (one.id === 'dead' ? { ...one, from: 0 } : one));

    expect(bandOf({ ...check, results }, -1)).toBe(2);
  });

  test('where a result is missing on this vehicle, the nearest band has the reading', () => {
    const results = check.results.filter(({ id }) => id !== 'low');

    expect([11, 3].map((value) => results[bandOf({ ...check, results }, value)]?.id)).toEqual([
      'full',
      'dead',
    ]);
  });

  test('what no meter can show any more is the outermost band, whether that has an end or not', () => {
    const closed = check.results.map((one) => (one.id === 'full' ? { ...one, below: 16 } : one));

    expect(volts(Infinity)).toBe('full');
    expect(volts(-Infinity)).toBe('dead');
    expect(bandOf({ ...check, results: closed }, Infinity)).toBe(0);
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

describe('what the error of a meter leaves open', () => {
  const meter = { quantity: 'voltage', unit: 'V' } as const;
  const bands = (value: number, uncertainty?: number) => {
    const { stands, lo, hi } = judge(check, measured({ ...meter, uncertainty }, value));
    return [stands, lo, hi].map((place) => check.results[place]?.id);
  };

  test.each([
    // A hand-held meter is off by 0.005 V + 0.8 %: common practice, no source. At 11.9 V that is
    // 0.1002 V, so 12.0002 V may be there; at 11.89 V it is 0.10012 V, which ends at 11.99012 V.
    [11.9, ['low', 'full', 'low']],
    [11.89, ['low', 'low', 'low']],
    // At 12.1 V it is 0.1018 V, down to 11.9982 V; at 12.11 V 0.10188 V, down to 12.00812 V.
    [12.1, ['full', 'full', 'low']],
    [12.11, ['full', 'full', 'full']],
    // At 2 V it is 0.021 V.
    [2.02, ['low', 'low', 'dead']],
    [1.98, ['dead', 'low', 'dead']],
    [2.03, ['low', 'low', 'low']],
  ])('%f V by a meter as usual', (value, found) => {
    expect(bands(value)).toEqual(found);
  });

  test("the check's own error counts before the usual one, its end included", () => {
    expect(bands(11.5, 0.5)).toEqual(['low', 'full', 'low']);
    expect(bands(11.99, 0.001)).toEqual(['low', 'low', 'low']);
    expect(bands(7, 6)).toEqual(['low', 'full', 'dead']);
  });

  test('what has no error, such as a count, stands where it stands', () => {
    expect(bands(12, 0)).toEqual(['full', 'full', 'full']);
    expect(bands(11.999, 0)).toEqual(['low', 'low', 'low']);
  });

  test('a reading within the error of an edge is both its bands, and no other is', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 16, noNaN: true }), (value) => {
        const error = 0.005 + 0.008 * value;
        // Right on the end of the error the last bit of a sum decides.
        fc.pre([2, 12].every((edge) => Math.abs(Math.abs(value - edge) - error) > 1e-9));
        const [stands, healthier, worse] = bands(value);
        const near = [2, 12].filter((edge) => Math.abs(value - edge) <= error);

        expect(stands).toBe(volts(value));
        expect([healthier, worse]).toEqual(
          near.length === 0 ? [stands, stands] : near[0] === 2 ? ['low', 'dead'] : ['full', 'low'],
        );
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
