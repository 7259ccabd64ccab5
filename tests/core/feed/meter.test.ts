import { expect, test } from 'vitest';
import { onMeter } from '../../../src/core/feed/meter.ts';

test.each([
  [12.6512, 'V', '12.65 V'],
  [0.0032, 'V', '0.003 V'],
  [-0.0048, 'A', '-0.005 A'],
  [0.000045, 'V', '0 V'],
  [-0.0000000000003, 'A', '0 A'],
] as const)('%d %s is shown as %s', (value, unit, shown) => {
  expect(onMeter(value, unit)).toBe(shown);
});
