import { describe, expect, test } from 'vitest';
import { nearest } from '../../../../src/core/trade/units/nearest.ts';
import { readNumber } from '../../../../src/core/trade/units/number.ts';
import { crossing } from '../../../../src/core/trade/root.ts';
import { inSpan, showSpan, span } from '../../../../src/core/trade/span.ts';
import { lookUp, lookUpLog, turned } from '../../../../src/core/trade/table.ts';

const table = [
  [0, 10],
  [10, 20],
  [30, 80],
] as const;

describe('tables', () => {
  test.each([
    [0, 10],
    [5, 15],
    [10, 20],
    [20, 50],
    [30, 80],
  ])('at %d stands %d', (place, want) => {
    expect(lookUp(table, place, 'place')).toBe(want);
  });

  test.each([-1, 31, Number.NaN])('%d is outside the table', (place) => {
    expect(() => lookUp(table, place, 'place')).toThrow(`place ${place} is outside 0 to 30`);
  });

  test('turned round, it gives the place of a value', () => {
    expect(lookUp(turned(table), 50, 'value')).toBe(20);
  });

  test('on a logarithmic scale the middle is the geometric mean', () => {
    expect(lookUpLog(table, 20, 'place')).toBeCloseTo(40, 9);
    expect(lookUpLog(table, 10, 'place')).toBe(20);
  });
});

describe('where a function crosses nothing', () => {
  test('is found to the last digits, rising or falling', () => {
    expect(crossing((x) => x * x - 2, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(crossing((x) => 2 - x * x, 0, 2)).toBeCloseTo(Math.SQRT2, 14);
    expect(crossing((x) => x, 0, 1)).toBe(0);
  });

  test('is refused when it does not cross', () => {
    expect(() => crossing((x) => x * x + 1, 0, 2)).toThrow('no answer between 0 and 2');
    expect(() => crossing(() => Number.NaN, 0, 2)).toThrow(RangeError);
  });
});

describe('ranges', () => {
  const volts = span('volts', 0, 16, 'V');

  test('both ends belong to a range', () => {
    expect([inSpan(0, volts), inSpan(16, volts)]).toEqual([0, 16]);
    expect(showSpan(volts)).toBe('0 to 16 V');
  });

  test.each([
    [-0.1, 'volts -0.1 V is outside 0 to 16 V.'],
    [16.5, 'volts 16.5 V is outside 0 to 16 V.'],
    [Number.NaN, 'volts not a number is outside 0 to 16 V.'],
    [Number.POSITIVE_INFINITY, 'volts Infinity V is outside 0 to 16 V.'],
  ])('%d is refused by name and range', (value, words) => {
    expect(() => inSpan(value, volts)).toThrow(words);
  });
});

describe('names with a slip in them', () => {
  test.each([
    ['dwel', ['dwell']],
    ['LAMBDA', ['lambda']],
    ['wire', ['wire-size', 'wire-current']],
    ['zzzzz', []],
  ])('%s', (word, want) => {
    expect(nearest(word, ['dwell', 'lambda', 'wire-size', 'wire-current'])).toEqual(want);
  });
});

describe('numbers as people write them', () => {
  test('no number at the start is none', () => {
    expect(readNumber('V 12')).toBeUndefined();
  });

  test('zero as a gauge is size 0 and 3/8 is no gauge of its own', () => {
    expect(readNumber('0', true)).toEqual({ value: 0, rest: '' });
    expect(readNumber('3/8 in', true)).toEqual({ value: 0.375, rest: 'in' });
  });
});
