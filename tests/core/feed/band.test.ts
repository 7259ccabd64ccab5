import { expect, test } from 'vitest';
import { bandChances, beside, normalBelow, raised } from '../../../src/core/feed/band.ts';
import { apart } from './build.ts';

// Standard normal table, as printed in any statistics book (from memory).
test.each([
  { z: 0, below: 0.5 },
  { z: 1, below: 0.841345 },
  { z: 1.96, below: 0.975002 },
  { z: -2.5, below: 0.00621 },
  { z: 4, below: 0.999968 },
])('of the standard normal $below lies below $z', ({ z, below }) => {
  expect(apart(normalBelow(z), below)).toBeLessThan(1e-6);
});

test('a reading on the edge of two bands falls into each half the time', () => {
  const shown = [{ mean: 12, deviation: 0.05, weight: 1 }];

  const [upper, lower] = bandChances([{ from: 12 }, { below: 12 }], shown);

  expect(apart(upper, 0.5)).toBeLessThan(1e-9);
  expect(apart(lower, 0.5)).toBeLessThan(1e-9);
});

test('with a perfect meter the edge belongs to the band that starts there', () => {
  const shown = [{ mean: 12, deviation: 0, weight: 1 }];

  expect(bandChances([{ from: 12 }, { below: 12 }], shown)).toEqual([1, 0]);
});

test('what falls outside all bands is shared out by their chances', () => {
  const shown = [{ mean: 12, deviation: 1, weight: 1 }];

  const chances = bandChances(
    [
      { from: 12, below: 13 },
      { from: 11, below: 12 },
    ],
    shown,
  );

  expect(chances.map((chance) => chance.toFixed(6))).toEqual(['0.500000', '0.500000']);
});

test('a row is raised to the least at the cost of its largest', () => {
  expect(raised([1, 0, 0]).map((chance) => chance.toFixed(3))).toEqual(['0.990', '0.005', '0.005']);
});

test('a row that looks healthier than the background becomes the background', () => {
  const background = [0.9, 0.06, 0.04];

  const row = beside(background, [1, 0, 0]).map((chance) => chance.toFixed(3));

  expect(row).toEqual(['0.900', '0.060', '0.040']);
});
