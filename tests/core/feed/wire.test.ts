import { expect, test } from 'vitest';
import { wireOhms } from '../../../src/core/feed/wire.ts';
import { apart } from './build.ts';

const feet = 0.3048;

// Solid copper at 20 °C, ohm per 1,000 ft: the AWG table printed by HyperPhysics after Floyd (read).
test.each([
  { gauge: -3, printed: 0.049, within: 0.0001 },
  { gauge: 0, printed: 0.0983, within: 0.0001 },
  { gauge: 1, printed: 0.124, within: 0.0001 },
  { gauge: 4, printed: 0.2485, within: 0.00015 },
  { gauge: 8, printed: 0.6282, within: 0.0004 },
  { gauge: 12, printed: 1.588, within: 0.001 },
  { gauge: 14, printed: 2.525, within: 0.0016 },
  { gauge: 18, printed: 6.385, within: 0.004 },
  { gauge: 24, printed: 25.67, within: 0.0155 },
])('$gauge AWG has the printed $printed ohm per 1,000 ft', ({ gauge, printed, within }) => {
  expect(apart(wireOhms(gauge, 1000 * feet), printed)).toBeLessThan(within);
});

test('a metre of 12 AWG is 5.21 milliohm', () => {
  expect(apart(wireOhms(12, 1), 0.00521)).toBeLessThan(0.000005);
});

test('no wire has no ohms', () => {
  expect(wireOhms(12, 0)).toBe(0);
});

test.each([
  { gauge: 12.5, metres: 1, told: 'gauge 12.5 is outside -3 to 40' },
  { gauge: 41, metres: 1, told: 'gauge 41 is outside -3 to 40' },
  { gauge: 12, metres: -1, told: 'length -1 m is outside 0 m and up' },
  { gauge: 12, metres: NaN, told: 'length NaN m is outside 0 m and up' },
])('$told', ({ gauge, metres, told }) => {
  expect(() => wireOhms(gauge, metres)).toThrow(told);
});
