import { describe, expect, test } from 'vitest';
import {
  jointHeat,
  jointLoss,
  voltageDrop,
  voltageLost,
} from '../../../../src/core/trade/figures/wire/drop.ts';
import {
  fuseLinkGauge,
  gaugeAreaRatio,
  meltingAmps,
  meltingCurrent,
  meltingDiameter,
  meltingSeconds,
} from '../../../../src/core/trade/figures/wire/melt.ts';
import { allowableCurrent, thinnestWire } from '../../../../src/core/trade/figures/wire/size.ts';
import {
  ohmsPerMetre,
  wireArea,
  wireCmil,
  wireDiameter,
  wireResistance,
} from '../../../../src/core/trade/figures/wire/wire.ts';

describe('wire sizes and resistances', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['diameter of AWG 16, in', wireDiameter(16), 0.05082, 5],
    ['area of AWG 14, cmil', wireCmil(14), 4106.7, 1],
    ['area of AWG 10, mm2', wireArea(10), 5.2612, 4],
    [
      'AWG 12 at 68 F, ohm/m',
      ohmsPerMetre({ gauge: 12, kind: 'solid', temperature: 68 }),
      0.0052107,
      6,
    ],
    ['200 A through 0.01 ohm, V', voltageLost(200, 0.01), 2, 12],
    ['heat of 0.2 V at 60 A, W', jointLoss(60, 0.2).watts, 12, 12],
    ['AWG 14, 105 C, engine space, A', allowableCurrent(14, 105, 'engine-space'), 29.75, 9],
    ['fusible link for AWG 12', fuseLinkGauge(12), 16, 12],
    ['area ratio of four numbers', gaugeAreaRatio(4), 2.528, 3],
    ['melting current of 4106.8 cmil, A', meltingAmps(4106.8, 10, 40), 186.7, 1],
    ['melting time at 400 A, s', meltingSeconds(4106.8, 400, 25), 2.256, 3],
    ['diameter that melts at 30 A, in', meltingDiameter(30), 0.0205, 4],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  test('the thinnest wire keeps both the drop and the current', () => {
    const run = {
      current: 30,
      length: 15,
      drop: 0.36,
      insulation: 105,
      place: 'engine-space',
      temperature: 68,
    };

    expect(thinnestWire(run)).toBe(8);
    expect(thinnestWire({ ...run, drop: 5 })).toBe(12);
  });

  test('a run that no wire can serve is refused', () => {
    const run = {
      current: 900,
      length: 1,
      drop: 9,
      insulation: 60,
      place: 'open',
      temperature: 68,
    };

    expect(() => thinnestWire(run)).toThrow('current 900 A over 1 ft needs more than AWG 0000');
  });

  test('a size between those of the current table counts as the thinner one', () => {
    expect(allowableCurrent(11, 105, 'open')).toBe(allowableCurrent(12, 105, 'open'));
  });

  test('a metric size between those of the standard lies between their resistances', () => {
    const ohms = [2.5, 3, 4].map((area) =>
      ohmsPerMetre({ area, kind: 'flexible', temperature: 68 }),
    );

    expect(ohms.toSorted((left, right) => right - left)).toEqual(ohms);
  });

  test.each([
    ['a gauge beyond the table', () => wireDiameter(50), 'gauge 50 AWG is outside -3 to 40 AWG'],
    [
      'neither gauge nor area',
      () => ohmsPerMetre({ kind: 'solid', temperature: 68 }),
      'give either gauge or area',
    ],
    [
      'aircraft wire by area',
      () => ohmsPerMetre({ area: 1, kind: 'tinned', temperature: 68 }),
      'gauge is missing',
    ],
    [
      'metric cable thicker than the table',
      () => ohmsPerMetre({ area: 150, kind: 'cable', temperature: 68 }),
      'area 150 mm2 is outside 0.5 to 120 mm2',
    ],
    ['not a number', () => voltageLost(Number.NaN, 1), 'current not a number is outside'],
    ['a negative resistance', () => voltageLost(1, -1), 'resistance -1 ohm is outside'],
    ['drop and resistance at once', () => jointLoss(1, 1, 1), 'give either drop or resistance'],
    ['insulation of no column', () => allowableCurrent(14, 70, 'open'), 'insulation 70 C is not'],
    [
      'melting that takes too long',
      () => meltingSeconds(4106.8, 10, 25),
      'is outside 0.01 to 10 s',
    ],
  ])('%s is refused', (_, run, words) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(words);
  });
});

describe('wire verdicts', () => {
  test('a drop is held against the limit of its circuit', () => {
    const sound = voltageDrop.run({ current: 100, resistance: 0.001, circuit: 'starter' });
    const bad = voltageDrop.run({ current: 100, resistance: 0.01, circuit: 'starter' });

    expect(sound.verdict).toMatch(/^Within the 0.2 V allowed \(US Army/);
    expect(bad.verdict).toMatch(/^More than the 0.2 V allowed/);
  });

  test('a drop needs a resistance or a length of something', () => {
    expect(() => voltageDrop.run({ current: 1, length: 3 })).toThrow('give resistance, or length');
  });

  test('a joint with no current has no resistance that could be told', () => {
    const { outputs } = jointHeat.run({ current: 0, drop: 0.05 });

    expect(Object.keys(outputs)).toEqual(['result', 'drop']);
  });

  test('a hot joint is to be let cool', () => {
    expect(jointHeat.run({ current: 60, drop: 0.2 }).verdict).toContain('let it cool first');
    expect(jointHeat.run({ current: 60, drop: 0.05 }).verdict).toContain('No more than');
  });

  test('a wire is given by gauge or by area, not by both', () => {
    expect(() => meltingCurrent.run({ gauge: 14, area: 2 })).toThrow('give either gauge or area');
    expect(() => wireResistance.run({ gauge: 14, area: 2 })).toThrow('give either gauge or area');
  });

  test('the same wire by area melts at the same current', () => {
    const byGauge = meltingCurrent.run({ gauge: 14 }).outputs['result']?.value;
    const byArea = meltingCurrent.run({ area: wireArea(14) }).outputs['result']?.value;

    expect(byArea).toBeCloseTo(byGauge ?? Number.NaN, 9);
  });
});
