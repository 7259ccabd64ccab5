import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judge } from '../../../src/core/tree/judge.ts';
import { smallTree } from '../../helpers/tree.ts';

const volts = (value: number, insisted?: boolean) => {
  const check = smallTree().checks['volts'];
  if (check?.reading === undefined) throw new Error('the small tree measures volts');
  const judged = judge(check, check.reading, value, insisted);
  return judged.kind === 'result' ? check.results[judged.index]?.id : judged;
};

describe('what a reading is worth', () => {
  // The bands of the small tree: 12 or more, 2 to below 12, below 2; plausible 0 to 16.
  test.each([
    [0, 'dead'],
    [1.999, 'dead'],
    [2, 'low'],
    [11.999, 'low'],
    [12, 'full'],
    [16, 'full'],
  ])('%f V falls in its band, the lower end belonging to it', (value, result) => {
    expect(volts(value)).toBe(result);
  });

  test.each([[-0.001], [16.001], [12_000]])('%f V is asked about first', (value) => {
    expect(volts(value)).toEqual({ kind: 'implausible', low: 0, high: 16 });
  });

  test.each([
    [-3, 'dead'],
    [24, 'full'],
  ])('%f V insisted on falls in the nearest band', (value, result) => {
    expect(volts(value, true)).toBe(result);
  });

  test('the very top of the range belongs to the band that ends there', () => {
    const tree = smallTree();
    const check = tree.checks['volts'];
    if (check?.reading === undefined) throw new Error('the small tree measures volts');
    const results = check.results.map((one) => (one.id === 'full' ? { ...one, below: 16 } : one));

    expect(judge({ ...check, results }, check.reading, 16)).toEqual({ kind: 'result', index: 0 });
    expect(judge({ ...check, results }, check.reading, 18, true)).toEqual({
      kind: 'result',
      index: 0,
    });
  });

  test('every plausible reading falls in exactly the band that holds it', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 16, noNaN: true }), (value) => {
        expect(volts(value)).toBe(value >= 12 ? 'full' : value >= 2 ? 'low' : 'dead');
      }),
      { seed: 43, numRuns: 300 },
    );
  });
});
