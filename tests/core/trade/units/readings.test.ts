import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../../../src/core/trade/units/quantities.ts';
import { parseReadings } from '../../../../src/core/trade/units/readings.ts';

function read(text: string, quantity: Quantity, unit: string): string {
  const parsed = parseReadings(text, { quantity, unit });
  if (parsed.kind === 'bad') return parsed.problems.map((each) => each.code).join();
  return parsed.value.map((each) => `${each.value} ${each.unit}`).join(', ');
}

describe('several readings on one line', () => {
  test.each([
    ['12.55 12.30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12.55, 12.30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12.55,12.30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12.55/12.30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12,55 / 12,30 V', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12,55 12,30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12,55; 12,30', 'voltage', 'V', '12.55 V, 12.3 V'],
    ['12.55', 'voltage', 'V', '12.55 V'],
    ['12.55 V 300 mV', 'voltage', 'V', '12.55 V, 300 mV'],
    ['0.2 -0.1', 'voltage', 'V', '0.2 V, -0.1 V'],
    ['10bar,9,9.5', 'pressure', 'psi', '10 bar, 9 bar, 9.5 bar'],
    ['150 145 140 psi', 'pressure', 'kPa', '150 psi, 145 psi, 140 psi'],
    ['150/145/140', 'pressure', 'psi', '150 psi, 145 psi, 140 psi'],
    ['150,145,140', 'pressure', 'psi', '150 psi, 145 psi, 140 psi'],
    ['160,120', 'pressure', 'psi', '160 psi, 120 psi'],
    ['10,2;9', 'pressure', 'bar', '10.2 bar, 9 bar'],
    ['15 in Hg 14', 'vacuum', 'kPa', '15 inHg, 14 inHg'],
    ['9 kg/cm2 8.5', 'pressure', 'psi', '9 kgf/cm2, 8.5 kgf/cm2'],
    ['1,265 1,250', 'gravity', '1', '1.265 1, 1.25 1'],
    ['1,265', 'gravity', '1', '1.265 1'],
    ['3/8; 5/16 in', 'length', 'mm', '0.375 in, 0.3125 in'],
    ['2/0 4', 'wire-gauge', 'AWG', '-1 AWG, 4 AWG'],
    ['12,5', 'voltage', 'V', 'reading-ambiguous'],
    ['12.5 much', 'voltage', 'V', 'reading-unit-unknown'],
    ['12.5 much 3', 'voltage', 'V', 'reading-unit-unknown'],
    ['12.5 psi', 'voltage', 'V', 'reading-unit-wrong'],
    ['', 'voltage', 'V', 'reading-empty'],
    [' / ', 'voltage', 'V', 'reading-not-a-number'],
  ] as const)('"%s" as a %s in %s: %s', (text, quantity, unit, want) => {
    expect(read(text, quantity, unit)).toBe(want);
  });

  test('what is plausible tells a decimal comma from one that parts two readings', () => {
    const ten = { quantity: 'voltage', unit: 'V', plausible: [10, 16] } as const;

    expect(parseReadings('12,5', ten)).toEqual({
      kind: 'good',
      value: [{ value: 12.5, unit: 'V' }],
    });
    expect(parseReadings('12500,5 mV', ten)).toMatchObject({
      value: [{ value: 12_500.5, unit: 'mV' }],
    });
  });

  test('any text gives finite readings or exactly one problem', () => {
    const keys = Array.from('0123456789.,;/- eEVm+"\u0000½');

    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...keys) }), (text) => {
        const parsed = parseReadings(text, { quantity: 'voltage', unit: 'V' });
        const lawful =
          parsed.kind === 'good'
            ? parsed.value.length > 0 && parsed.value.every(({ value }) => Number.isFinite(value))
            : parsed.problems.length === 1;
        expect(lawful).toBe(true);
      }),
      { seed: 13, numRuns: 3000 },
    );
  });
});
