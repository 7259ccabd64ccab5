import { expect, test } from 'vitest';
import { quantityNames, quantities } from '../../../../src/core/trade/units/quantities.ts';
import {
  uncertaintySource,
  usualUncertainty,
} from '../../../../src/core/trade/units/uncertainty.ts';

test.each([
  // The sums by hand: fixed part + share of the reading, both common practice, no source.
  ['voltage', 12.4, 'V', 0.005 + 0.008 * 12.4],
  ['voltage', 180, 'mV', 5 + 0.008 * 180],
  ['current', 0.05, 'A', 0.003 + 0.02 * 0.05],
  ['vacuum', 17, 'inHg', 0.5],
  ['pressure', 150, 'psi', 0.25 + 0.02 * 150],
  ['rotation', 750, 'rpm', 20 + 0.01 * 750],
  ['angle', 8, 'deg', 1],
  ['temperature', 90, 'C', 2 + 0.01 * 90],
  // 2 C and one percent of 100 C are 3 C, which are 5.4 F.
  ['temperature', 212, 'F', 5.4],
  ['gravity', 1.265, '1', 0.005],
  ['count', 4, '1', 0],
] as const)('%s of %d %s is off by so much', (quantity, value, unit, off) => {
  expect(usualUncertainty(quantity, value, unit)).toBeCloseTo(off, 6);
});

test('a reading below zero is off as far as its mirror image', () => {
  expect(usualUncertainty('voltage', -12.4, 'V')).toBeCloseTo(
    usualUncertainty('voltage', 12.4, 'V'),
    12,
  );
});

test.each(quantityNames)('%s has one in each of its units, and a source', (quantity) => {
  for (const { id, factor, offset = 0, upsideDown } of quantities[quantity].units) {
    const [, most] = quantities[quantity].everyday;
    const value = (upsideDown === true ? 1 / most : most) / factor - offset;
    const off = usualUncertainty(quantity, value, id);
    expect(Number.isFinite(off) && off >= 0, `${quantity} in ${id}`).toBe(true);
  }
  expect(uncertaintySource(quantity)).toMatch(/common practice, no source/);
});
