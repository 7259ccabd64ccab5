import { describe, expect, test } from 'vitest';
import { showProblem } from '../../../src/core/problem.ts';
import { runFigure } from '../../../src/core/trade/run-figure.ts';

function told(name: string, typed: Readonly<Record<string, string>>): readonly string[] {
  const run = runFigure(name, typed);
  return run.kind === 'bad' ? run.problems.map(showProblem) : [];
}

function result(name: string, typed: Readonly<Record<string, string>>): number | undefined {
  const run = runFigure(name, typed);
  return run.kind === 'good' ? run.value.outputs['result']?.value : undefined;
}

describe('running a figure on what was typed', () => {
  test('the run tells inputs as typed, presets, outputs with units, verdict, source and mark', () => {
    const run = runFigure('joint-heat', { current: '60 A', drop: '200 mV' });

    expect(run).toEqual({
      kind: 'good',
      value: {
        figure: 'joint-heat',
        inputs: { current: { value: 60, unit: 'A' }, drop: { value: 200, unit: 'mV' } },
        outputs: {
          result: { value: 12, unit: 'W' },
          drop: { value: 0.2, unit: 'V' },
          resistance: { value: expect.closeTo(0.00333333, 7), unit: 'ohm' },
        },
        verdict: expect.stringContaining('Rule of thumb'),
        source: expect.stringContaining('common practice'),
        mark: 'computed',
      },
    });
  });

  test('presets that counted are told too', () => {
    const run = runFigure('timing-mark', { diameter: '6 in' });

    expect(run.kind === 'good' ? run.value.inputs : {}).toEqual({
      diameter: { value: 6, unit: 'in' },
      angle: { value: 1, unit: 'deg' },
    });
  });

  test.each([
    ['metric lengths', 'timing-mark', { diameter: '152.4 mm', angle: '10' }, 0.5235988],
    ['celsius', 'hydrometer-correction', { temperature: '-1,1111111 C' }, -0.02],
    ['a choice with its unit', 'rested-voltage', { charge: '75', battery: '6 V' }, 6.225],
    ['a share as a percent', 'coolant-freeze', { glycol: '0.5 ratio' }, -37],
    ['a list in one unit', 'compression-spread', { readings: '160 150 120 155 psi' }, 25],
    ['a list of units', 'compression-spread', { readings: '160psi 120psi' }, 25],
    ['a list with commas', 'compression-spread', { readings: '160,150,120' }, 25],
    ['a list with comma and blank', 'compression-spread', { readings: '160, 150, 120' }, 25],
    ['a list of decimal commas', 'compression-spread', { readings: '10,0 7,5 bar' }, 25],
    ['a list of decimal commas, parted', 'compression-spread', { readings: '10,0;7,5 bar' }, 25],
    ['a unit on the first of a list', 'compression-spread', { readings: '10bar,9,9.5' }, 10],
    ['minus forty', 'charging-voltage', { temperature: '-40C' }, 15.5],
    ['a value with its unit', 'convert', { value: '20 inHg', to: 'kPa' }, 67.72778],
    ['a value and its unit apart', 'convert', { value: '20', from: 'in Hg', to: 'kPa' }, 67.72778],
    ['a tire size', 'tire-size', { tire: '275/60R15' }, 27.9921],
    [
      'a gauge with a slash',
      'wire-current',
      { gauge: '2/0', insulation: '105', place: 'open' },
      330,
    ],
  ])('%s can be typed', (_, name, typed, want) => {
    expect(result(name, typed)).toBeCloseTo(want, 4);
  });

  test('the unit of a conversion is written our way', () => {
    const run = runFigure('convert', { value: '1 bar', to: 'PSI' });

    expect(run.kind === 'good' ? run.value.outputs['result']?.unit : '').toBe('psi');
  });

  test.each([
    [
      'a figure with a slip in it',
      'dwel',
      {},
      ['There is no figure "dwel". Did you mean dwell? "droplight figure" lists all.'],
    ],
    [
      'an input with a slip in it',
      'dwell',
      { cylnders: '4', percent: '60' },
      [
        'dwell has no input "cylnders". Did you mean cylinders?',
        'dwell needs cylinders (lobes of the distributor cam). Add cylinders=….',
      ],
    ],
    [
      'a missing input',
      'cell-spread',
      {},
      ['cell-spread needs cells (one reading a cell). Add cells=….'],
    ],
    [
      'a missing input with a unit',
      'tire-size',
      {},
      ['tire-size needs tire (such as 275/60R15, 165R13, 6.50-16, 7.35-14). Add tire=….'],
    ],
    [
      'a value out of range',
      'self-discharge',
      { temperature: '120 F' },
      ['Temperature 120 F is outside 50 to 100 F. self-discharge holds for 50 to 100 F.'],
    ],
    [
      'a temperature that cannot be',
      'self-discharge',
      { temperature: '-500 C' },
      ['temperature: temperature -500 C is below absolute zero. Check the value and its unit.'],
    ],
    [
      'a wrong unit',
      'timing-mark',
      { diameter: '6 V' },
      [
        'diameter: "V" measures voltage, not length. Use mm, cm, m, km, in or ft; with no unit it is in.',
      ],
    ],
    [
      'volts with a minus',
      'cranking-voltage',
      { volts: '-9.9' },
      [
        'volts: -9.9 has a minus: are the probes swapped, or is it positive ground? If so, type it without the minus.',
      ],
    ],
    [
      'an unknown choice',
      'wire-current',
      { gauge: '14', place: 'engine' },
      ['place: "engine" is not one of the choices. Did you mean engine-space?'],
    ],
    ['an empty text', 'tire-size', { tire: ' ' }, ['tire: There is nothing typed. Type a value.']],
    [
      'an empty list',
      'cell-spread',
      { cells: ' ' },
      ['cells: There is no reading. Type a number such as 1.25.'],
    ],
    [
      'one bad reading of a list',
      'cell-spread',
      { cells: '1.26 y 1.25' },
      ['cells: The unit "y" is not known. Use 1 or points; with no unit it is 1.'],
    ],
    [
      'a number that is none',
      'convert',
      { value: 'x', from: 'V', to: 'mV' },
      ['value: "x" is not a number. Type a number such as 12.4.'],
    ],
    [
      'a number that can mean two things',
      'convert',
      { value: '1,250', from: 'V', to: 'mV' },
      ['value: "1,250" can mean 1.25 or 1250. Write 1.25 or 1250.'],
    ],
    [
      'units that do not go together',
      'convert',
      { value: '1 V', to: 'psi' },
      [
        'Unit "V" measures voltage, unit "psi" measures pressure or vacuum. convert holds for units of one quantity.',
      ],
    ],
  ])('%s is told with how to mend it', (_, name, typed, want) => {
    expect(told(name, typed)).toEqual(want);
  });

  test('a name that is like none lists some', () => {
    expect(told('xyzzy', {})[0]).toMatch(
      /There are: wire-resistance, .* and more\. "droplight figure" lists all\.$/,
    );
  });

  test('a name from the depths of the language is no input', () => {
    expect(told('dwell', { constructor: '1', cylinders: '4', percent: '60' })).toHaveLength(1);
  });
});
