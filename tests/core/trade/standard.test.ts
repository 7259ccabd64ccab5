import { describe, expect, test } from 'vitest';
import { findFigure } from '../../../src/core/trade/catalog.ts';
import { standardFigures, standardReading } from '../../../src/core/trade/standard.ts';
import type { Conditions } from '../../../src/core/trade/standard.ts';

function standard(figure: string, value: number, unit: string, conditions: Conditions): string {
  const found = standardReading(figure, { value, unit }, conditions);
  if (found.kind !== 'standard')
    return found.kind === 'needs' ? `needs ${found.condition}` : 'as-is';
  return `${found.value.toFixed(2)} ${found.unit} ${found.under}`;
}

describe('a reading brought to reference conditions', () => {
  test.each([
    [
      'vacuum up a mountain',
      standard('vacuum-at-altitude', 13, 'inHg', { altitude: 1524 }),
      '18.03 inHg at sea level',
    ],
    [
      'vacuum in the unit typed',
      standard('vacuum-at-altitude', 44, 'kPa', { altitude: 1524 }),
      '61.02 kPa at sea level',
    ],
    [
      'compression up a mountain',
      standard('cranking-compression', 125, 'psi', { altitude: 1524 }),
      '150.23 psi at sea level',
    ],
    [
      'a load test in the cold',
      standard('load-test', 9.1, 'V', { temperature: -1.1, volts: 12 }),
      '9.60 V at 70 F, told as a 12 V battery',
    ],
    [
      'a load test of a 6 V battery',
      standard('load-test', 4.8, 'V', { temperature: 25, volts: 6 }),
      '9.60 V at 70 F, told as a 12 V battery',
    ],
    [
      'a hydrometer in the cold',
      standard('electrolyte', 1.25, '1', { temperature: -1.111 }),
      '1.23 1 at 80 F',
    ],
    [
      'a 6 V battery',
      standard('battery-charge', 6.2, 'V', { volts: 6 }),
      '12.40 V told as a 12 V battery',
    ],
    ['a 12 V battery', standard('battery-charge', 12.4, 'V', { volts: 12 }), 'as-is'],
    ['vacuum at the sea', standard('vacuum-at-altitude', 18, 'inHg', { altitude: 0 }), 'as-is'],
    ['a figure that changes nothing', standard('dwell', 50, 'deg', {}), 'as-is'],
    ['no altitude', standard('vacuum-at-altitude', 18, 'inHg', {}), 'needs altitude'],
    ['no temperature', standard('load-test', 9, 'V', { volts: 12 }), 'needs temperature'],
    ['no volts', standard('battery-charge', 9, 'V', { temperature: 20 }), 'needs volts'],
    [
      'an altitude that is no number',
      standard('vacuum-at-altitude', 18, 'inHg', { altitude: Number.NaN }),
      'needs altitude',
    ],
    [
      'a battery colder than the table counts as its coldest row',
      standard('load-test', 8.5, 'V', { temperature: -40, volts: 12 }),
      '9.60 V at 70 F, told as a 12 V battery',
    ],
  ])('%s', (_, got, want) => {
    expect(got).toBe(want);
  });

  test('every figure that can do it is in the catalog', () => {
    expect(standardFigures.filter((name) => findFigure(name) === undefined)).toEqual([]);
  });
});
