import { describe, expect, test } from 'vitest';
import { runFigure } from '../../../../src/core/trade/run-figure.ts';
import { convert } from '../../../../src/core/trade/units/units.ts';
import { standardReading } from '../../../../src/core/trade/standard.ts';

type Typed = Readonly<Record<string, string>>;

function told(figure: string, typed: Typed): string {
  const run = runFigure(figure, typed);
  return run.kind === 'good'
    ? (run.value.verdict ?? '')
    : run.problems.map(({ message }) => message).join(' ');
}

describe('what a figure says of a reading', () => {
  test.each<[figure: string, typed: Typed, words: string | RegExp]>([
    // A verdict never condemns by less than is shown: the floor at -1 C is 9.104 V, shown as 9.1.
    ['load-test', { temperature: '-1C', volts: '9.1' }, 'Holds up: 9.1 V'],
    ['load-test', { temperature: '30F', volts: '9.1' }, 'Holds up: 9.1 V'],
    ['load-test', { temperature: '30F', volts: '9.05' }, 'Below 9.1 V'],
    // The band of charging volts moves with the temperature, as its own result does.
    ['charging-voltage', { temperature: '120F', volts: '14.7' }, 'Charges too hard'],
    ['charging-voltage', { temperature: '-20F', volts: '15.0' }, 'Charges as it should'],
    ['charging-voltage', { temperature: '20F', volts: '13.6' }, 'Charges too little'],
    ['charging-voltage', { volts: '13.5' }, 'Charges as it should: 13.5 V to 14.8 V'],
    ['charging-voltage', { volts: '7.2', battery: '6' }, 'Charges as it should: 6.9 V to 7.4 V'],
    // Cranking volts tell of battery, starter and engine together.
    ['cranking-voltage', { volts: '12.3' }, 'the starter draws little or nothing'],
    ['cranking-voltage', { volts: '9.59' }, 'Load-test the battery before it is blamed'],
    ['cranking-voltage', { volts: '9.6' }, 'Holds up under the starter'],
    ['cranking-voltage', { volts: '6.1', battery: '6' }, 'draws little or nothing'],
    ['voltage-drop', { current: '9.5', resistance: '0.12' }, 'More than the 0.5 V allowed'],
    ['voltage-drop', { current: '0', resistance: '0.12' }, 'Nothing flows'],
    ['voltage-drop', { current: '5', gauge: '14' }, 'Give resistance, or length'],
    ['compression-spread', { readings: '10bar,9,9.5' }, 'All cylinders are above'],
    ['compression-spread', { readings: '150' }, 'One cylinder alone'],
    ['compression-spread', { readings: '150 90', wet: '120' }, 'Readings wet are 1, dry 2'],
    // 5200 ft: 24.63 inHg of air (US Standard Atmosphere 1976, computed).
    ['vacuum-at-altitude', { altitude: '5200ft', reading: '26' }, /^Vacuum 26 inHg is outside/],
    ['vacuum-at-altitude', { altitude: '5200ft', reading: '15' }, 'Healthy'],
    ['vacuum-at-altitude', { altitude: '10500ft', reading: '0' }, 'None: is the gauge on'],
    [
      'battery-charge',
      { volts: '12.2', battery: '6' },
      /^Volts of a 6 V battery 12.2 V is outside 3 to 8 V/,
    ],
    ['cranking-voltage', { volts: '10', battery: '6' }, /^Volts of a 6 V battery 10 V is outside/],
    ['load-test', { volts: '9', battery: '6' }, /^Volts of a 6 V battery 9 V is outside 0 to 8 V/],
    ['charging-voltage', { volts: '14', battery: '6' }, /^Volts of a 6 V battery 14 V is outside/],
    ['charging-voltage', { volts: '7.2' }, 'Is it a 6 V battery?'],
    ['battery-charge', { volts: '6.2' }, 'Is it a 6 V battery?'],
    ['battery-charge', { volts: '12.65' }, 'Charged 95 to 100 %'],
    ['battery-charge', { volts: '11.6' }, 'Charged 0 to 5 %'],
  ])('%s of %j', (figure, typed, words) => {
    expect(told(figure, typed)).toMatch(words);
  });

  test('a compression limit is moved up a hill as the trees judge a reading', () => {
    const run = runFigure('compression-at-altitude', { reading: '120', altitude: '5200ft' });
    const there = run.kind === 'good' ? run.value.outputs['result']?.value : undefined;
    const back = standardReading(
      'cranking-compression',
      { value: there ?? Number.NaN, unit: 'psi' },
      { altitude: convert(5200, 'ft', 'm') },
    );

    // 120 psi x 0.8252, the ratio of standard air pressures (computed).
    expect(there).toBeCloseTo(98.9, 0);
    expect(back).toMatchObject({ value: expect.closeTo(120, 9) as unknown });
  });

  test('no vacuum is none at any height, and little stays little', () => {
    const seaLevel = (value: number) =>
      standardReading('vacuum-at-altitude', { value, unit: 'inHg' }, { altitude: 3200 });

    expect(seaLevel(0)).toEqual({ kind: 'as-is' });
    expect(seaLevel(2)).toMatchObject({ value: expect.closeTo(5.9, 1) as unknown });
    expect(seaLevel(12)).toMatchObject({ value: expect.closeTo(21.7, 1) as unknown });
  });

  test('a timing mark after top lies on the other side', () => {
    const run = runFigure('timing-mark', { diameter: '6 in', angle: '-10' });

    expect(run.kind === 'good' ? run.value.outputs['result']?.value : 0).toBeCloseTo(-0.5236, 4);
  });
});
