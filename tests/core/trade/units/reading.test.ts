import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { showProblem } from '../../../../src/core/problem.ts';
import type { Quantity } from '../../../../src/core/trade/units/quantities.ts';
import { parseReading } from '../../../../src/core/trade/units/reading.ts';

const volts = { quantity: 'voltage', unit: 'V' } as const;

function read(text: string, quantity: Quantity, unit: string): string {
  const parsed = parseReading(text, { quantity, unit });
  if (parsed.kind === 'good') return `${parsed.value.value} ${parsed.value.unit}`;
  return parsed.problems.map((each) => each.code).join();
}

describe('reading what a person typed', () => {
  test.each([
    ['15', 'vacuum', 'inHg', '15 inHg'],
    ['15 inHg', 'vacuum', 'kPa', '15 inHg'],
    ['18"', 'vacuum', 'inHg', '18 inHg'],
    ['51 kPa', 'vacuum', 'inHg', '51 kPa'],
    ['12,4 V', 'voltage', 'V', '12.4 V'],
    ['12.4V', 'voltage', 'V', '12.4 V'],
    ['  .5 volts ', 'voltage', 'V', '0.5 V'],
    ['1 1/8 in', 'length', 'mm', '1.125 in'],
    ['1-1/8"', 'length', 'mm', '1.125 in'],
    ['1/2', 'length', 'in', '0.5 in'],
    ['68F', 'temperature', 'C', '68 F'],
    ['-5 C', 'temperature', 'F', '-5 C'],
    ['−5 °C', 'temperature', 'F', '-5 C'],
    ['+3', 'angle', 'deg', '3 deg'],
    ['1e3', 'rotation', 'rpm', '1000 rpm'],
    ['1,234,567 Pa', 'pressure', 'Pa', '1234567 Pa'],
    ['1,013.25 hPa', 'pressure', 'hPa', '1013.25 hPa'],
    ['0,985', 'ratio', '1', '0.985 1'],
    ['2/0', 'wire-gauge', 'AWG', '-1 AWG'],
    ['0000 AWG', 'wire-gauge', 'AWG', '-3 AWG'],
    ['AWG 16', 'wire-gauge', 'AWG', '16 AWG'],
    ['#10', 'wire-gauge', 'AWG', '10 AWG'],
    ['16 ga', 'wire-gauge', 'AWG', '16 AWG'],
    ['5,200 ft', 'length', 'm', '5200 ft'],
    ['5,200ft', 'length', 'ft', '5200 ft'],
    ['5 200 ft', 'length', 'ft', '5200 ft'],
    ['5\u202f200,5 ft', 'length', 'ft', '5200.5 ft'],
    ['½ in', 'length', 'mm', '0.5 in'],
    ['1½ in', 'length', 'mm', '1.5 in'],
    ['1 ⅛"', 'length', 'mm', '1.125 in'],
    ['-¼', 'angle', 'deg', '-0.25 deg'],
    ['-40C', 'temperature', 'F', '-40 C'],
    ['0.2 kA', 'current', 'A', '0.2 kA'],
    ['1.250 in', 'length', 'in', '1.25 in'],
    ['12.450', 'voltage', 'V', '12.45 V'],
    ['1.250 mA', 'current', 'mA', '1.25 mA'],
    ['1.250 rpm', 'rotation', 'rpm', '1250 rpm'],
  ] as const)('%s as a %s in %s is read', (text, quantity, unit, want) => {
    expect(read(text, quantity, unit)).toBe(want);
  });

  test.each([
    ['1,250 rpm', 'rotation', 'rpm', 1250],
    ['1,265', 'gravity', '1', 1.265],
    ['12,450', 'voltage', 'V', 12.45],
  ] as const)(
    'a comma in %s is read in the one way that makes sense',
    (text, quantity, unit, want) => {
      expect(read(text, quantity, unit)).toBe(`${want} ${unit}`);
    },
  );

  test('a comma that can mean two things is asked about', () => {
    const parsed = parseReading('1,250 mA', { quantity: 'current', unit: 'mA' });

    expect(parsed).toEqual({
      kind: 'bad',
      problems: [
        {
          code: 'reading-ambiguous',
          message: '"1,250 mA" can mean 1.25 or 1250 mA.',
          mend: 'Write 1.25 or 1250.',
          value: '1,250 mA',
        },
      ],
    });
  });

  test('a point with three digits behind it and feet or metres is asked about', () => {
    expect(parseReading('5.200 ft', { quantity: 'length', unit: 'ft' })).toMatchObject({
      problems: [{ code: 'reading-ambiguous', mend: 'Write 5.2 or 5200.' }],
    });
    expect(read('1.600', 'length', 'm')).toBe('reading-ambiguous');
  });

  test('where both ways are plausible, the everyday size decides', () => {
    const idle = { quantity: 'rotation', unit: 'rpm', plausible: [0, 6000] } as const;

    expect(parseReading('1,250', idle)).toEqual({
      kind: 'good',
      value: { value: 1250, unit: 'rpm' },
    });
  });

  test('the plausible band of a check settles what a mark means', () => {
    const wanted = { quantity: 'length', unit: 'ft', plausible: [0, 15_000] } as const;
    const altitude = { quantity: 'length', unit: 'ft', plausible: [100, 15_000] } as const;

    expect(parseReading('5.280', wanted).kind).toBe('bad');
    expect(parseReading('5.280', altitude)).toEqual({
      kind: 'good',
      value: { value: 5280, unit: 'ft' },
    });
  });

  test('a size that cannot be is never the meaning of a comma', () => {
    const wanted = { quantity: 'temperature', unit: 'C', plausible: [-40, 50] } as const;

    expect(parseReading('-1,250 F', wanted)).toEqual({
      kind: 'good',
      value: { value: -1.25, unit: 'F' },
    });
  });

  test.each([
    ['', 'reading-empty'],
    ['   ', 'reading-empty'],
    ['abc', 'reading-not-a-number'],
    ['NaN', 'reading-not-a-number'],
    ['Infinity', 'reading-not-a-number'],
    ['--5', 'reading-not-a-number'],
    ['1.2.3', 'reading-not-a-number'],
    ['12,34,5', 'reading-not-a-number'],
    ['1/2/3', 'reading-not-a-number'],
    ['12 13', 'reading-not-a-number'],
    ['1e999', 'reading-too-large'],
    ['1/0', 'reading-too-large'],
    ['12 cubits', 'reading-unit-unknown'],
    ['12 psi', 'reading-unit-wrong'],
  ])('"%s" is one problem: %s', (text, code) => {
    const parsed = parseReading(text, volts);

    expect(parsed.kind === 'bad' ? parsed.problems.map((each) => each.code) : []).toEqual([code]);
  });

  test('a wrong unit tells what it measures and what would fit', () => {
    const parsed = parseReading('12 psi', volts);

    expect(parsed.kind === 'bad' ? parsed.problems.map(showProblem) : []).toEqual([
      '"psi" measures pressure or vacuum, not voltage. Use V, mV or kV; with no unit it is V.',
    ]);
  });

  test('a long text is shortened where it is told', () => {
    const parsed = parseReading('x'.repeat(500), volts);

    expect(parsed.kind === 'bad' ? parsed.problems[0]?.value?.length : 0).toBe(40);
  });

  test('any text gives a finite reading or exactly one problem', () => {
    const keys = Array.from('0123456789.,/- eEVm+"\u0000é');

    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom(...keys) }), (text) => {
        const parsed = parseReading(text, volts);
        const outcome = parsed.kind === 'good' ? parsed.value.value : parsed.problems.length;
        const lawful = parsed.kind === 'good' ? Number.isFinite(outcome) : outcome === 1;
        expect(lawful).toBe(true);
      }),
      { seed: 12, numRuns: 3000 },
    );
  });
});
