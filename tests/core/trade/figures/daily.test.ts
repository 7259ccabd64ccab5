import { describe, expect, test } from 'vitest';
import { litresToReplace } from '../../../../src/core/trade/figures/antifreeze.ts';
import { hoursToCharge } from '../../../../src/core/trade/figures/battery/charger.ts';
import { starterAmps } from '../../../../src/core/trade/figures/battery/starter.ts';
import { coilMillijoules, coilVoltsOf } from '../../../../src/core/trade/figures/coil.ts';
import { compressionRatioOf } from '../../../../src/core/trade/figures/compression-ratio.ts';
import { drivenSpeed, milesAGallon } from '../../../../src/core/trade/figures/drive.ts';
import { ohmsLawOf, sumOfLoads } from '../../../../src/core/trade/figures/ohm.ts';
import { housingArc, sparksAMinute } from '../../../../src/core/trade/figures/sparks.ts';
import { tireOf } from '../../../../src/core/trade/figures/tires.ts';
import { bundleShare, hotShare } from '../../../../src/core/trade/figures/wire/bundle.ts';
import { runFigure } from '../../../../src/core/trade/run-figure.ts';

type Typed = Readonly<Record<string, string>>;

function verdict(figure: string, typed: Typed): string {
  const run = runFigure(figure, typed);
  return run.kind === 'good' ? (run.value.verdict ?? '') : '';
}

function output(figure: string, typed: Typed, name = 'result'): number | undefined {
  const run = runFigure(figure, typed);
  return run.kind === 'good' ? run.value.outputs[name]?.value : undefined;
}

describe('figures of daily use', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['12 V on 3 ohm, A', ohmsLawOf({ volts: 12, ohms: 3 }).amps, 4, 9],
    ['12 V on 3 ohm, W', ohmsLawOf({ volts: 12, ohms: 3 }).watts, 48, 9],
    ['two lamps, a small one and 3 A, A', sumOfLoads([55, 55, 5], [3], 12), 12.583, 3],
    ['eight wires in a bundle', bundleShare(8), 0.7, 9],
    ['60 C insulation in 50 C', hotShare(60, 50), 0.577, 3],
    ['60 Ah from half at 4 A, h', hoursToCharge(60, { from: 50, to: 100 }, 4), 9, 9],
    ['0.1172 V over 0.7815 milliohm, A', starterAmps(0.1172, 0.000_781_5), 150, 0],
    ['8 cylinders at 4000 rpm', sparksAMinute(8, 4000), 16_000, 9],
    ['9 mH at 4 A, mJ', coilMillijoules(9, 4), 72, 9],
    ['half of 12 V at the coil', coilVoltsOf(12, 1.5, 1.5), 6, 9],
    ['5 degrees of 70 mm, mm', housingArc(70, 5), 3.054, 3],
    [
      'ratio of 720.74 and 81.35 ml',
      compressionRatioOf({ swept: 720.74, clearance: 81.35 }),
      9.86,
      2,
    ],
    ['700 rpm, 6 in to 2.5 in', drivenSpeed(700, 6, 2.5), 1680, 9],
    ['235.2146 miles on 10 gallons', milesAGallon(235.2146, 10), 23.521, 3],
    ['10 l from 20 to 50 %, l', litresToReplace(10, { now: 20, wanted: 50, fill: 100 }), 3.75, 9],
    ['165R13, in', tireOf('165R13').diameter, 23.39, 2],
    ['6.50-16, in', tireOf('6.50-16').diameter, 29, 9],
    ['6.50 x 16, in', tireOf('6.50 x 16').diameter, 29, 9],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  test('any two of the four give the same circuit', () => {
    const whole = { volts: 12, amps: 4, ohms: 3, watts: 48 };
    const keys = ['volts', 'amps', 'ohms', 'watts'] as const;
    const pairs = keys.flatMap((one, at) =>
      keys.slice(at + 1).map((other) => [one, other] as const),
    );

    for (const [one, other] of pairs)
      expect(ohmsLawOf({ [one]: whole[one], [other]: whole[other] })).toEqual(whole);
  });

  test.each<[title: string, ask: () => unknown, words: string]>([
    ['one of the four alone', () => ohmsLawOf({ volts: 12 }), 'give two of'],
    ['three of the four', () => ohmsLawOf({ volts: 12, amps: 1, ohms: 12 }), 'give two of'],
    ['volts across nothing', () => ohmsLawOf({ volts: 12, ohms: 0 }), 'divided by 0'],
    ['power without a current', () => ohmsLawOf({ amps: 0, watts: 5 }), 'divided by 0'],
    ['no load at all', () => sumOfLoads([], [], 12), 'give watts, amps or both'],
    ['no wire in the bundle', () => bundleShare(0), 'wires 0 is outside 1 to 100'],
    ['air as hot as its insulation', () => hotShare(60, 60), 'leaves 60 C insulation nothing'],
    ['less charge than there is', () => hoursToCharge(50, { from: 80, to: 50 }, 4), 'less than'],
    ['a cable without resistance', () => starterAmps(0.1, 0), 'resistance 0 ohm is outside'],
    ['no room above the piston', () => compressionRatioOf({ swept: 500, clearance: 0 }), 'no room'],
    ['a pulley of no size', () => drivenSpeed(700, 6, 0), 'diameter 0 in is outside 0.5 to 40 in'],
    ['no fuel', () => milesAGallon(100, 0), 'fuel 0 gal is outside'],
    ['less antifreeze', () => litresToReplace(8, { now: 50, wanted: 30, fill: 100 }), 'less than'],
    [
      'a weak fill',
      () => litresToReplace(8, { now: 20, wanted: 50, fill: 40 }),
      'cannot give 50 %',
    ],
    ['letters that tell a load', () => tireOf('E70-14'), 'its letter tells a load'],
    ['letters of a radial', () => tireOf('FR78-15'), 'Measure the tire'],
    ['a crossply without its dot', () => tireOf('640-15'), 'is not a size such as'],
  ])('%s is refused by name', (_, ask, words) => {
    expect(ask).toThrow(RangeError);
    expect(ask).toThrow(words);
  });

  test.each<[figure: string, typed: Typed, words: string]>([
    ['starter-draw', { drop: '0.12', gauge: '2', length: '5ft' }, 'Usual: 80 A to 250 A'],
    ['starter-draw', { drop: '0.5', gauge: '2', length: '5ft' }, 'Much:'],
    ['starter-draw', { drop: '0.02', resistance: '1 mohm' }, 'Little:'],
    ['coil-volts', { read: '6.2' }, 'About the 6 V'],
    ['coil-volts', { read: '12' }, 'All of the supply'],
    ['coil-volts', { read: '8' }, 'More than 6 V'],
    ['coil-volts', { read: '4' }, 'Less than 6 V'],
    ['charge-time', { from: '50' }, 'no flame'],
    ['antifreeze-top-up', { capacity: '10', now: '20' }, 'top hose cold to the hand'],
  ])('%s says what %j means', (figure, typed, words) => {
    expect(verdict(figure, typed)).toContain(words);
  });

  test.each<[figure: string, typed: Typed, name: string, want: number]>([
    ['load-sum', { watts: '55 55 5', amps: '3' }, 'fuse', 15.729],
    ['wire-derating', { current: '20', wires: '8', air: '50C' }, 'result', 8.083],
    ['spark-rate', { cylinders: '8', speed: '4000' }, 'between', 3.75],
    ['spark-rate', { cylinders: '4', speed: '3000', percent: '60' }, 'closed', 6],
    // 3.333 ms of 13.8 V on 3 ohm and 9 mH build up 3.0855 A (reference row ign.it.3.333: 3.085).
    ['coil-energy', { volts: '13.8', time: '3.333ms' }, 'result', 42.84],
    [
      'compression-ratio',
      { bore: '4', stroke: '3.5', chamber: '64', deck: '0.02', dish: '5' },
      'result',
      9.859,
    ],
    ['distributor-arc', { diameter: '70mm' }, 'perLength', 1.637],
    ['distributor-arc', { diameter: '70mm', angle: '36' }, 'share', 10],
    ['pulley-ratio', { driving: '6', driven: '2.5' }, 'ratio', 2.4],
    ['fuel-use', { distance: '400km', fuel: '40l' }, 'metric', 10],
    ['antifreeze-top-up', { capacity: '10', now: '20' }, 'freezes', -37],
  ])('%s of %j: %s', (figure, typed, name, want) => {
    expect(output(figure, typed, name)).toBeCloseTo(want, 2);
  });

  test('only a metric size with its aspect is worked out; the others are told from memory', () => {
    const marks = ['205/70R14', '165SR13', '185R14', '7.35-14', '6.00-13', '7.00-15', '6.40-15'];

    expect(marks.map((size) => tireOf(size).mark)).toEqual([
      'computed',
      ...Array.from({ length: 6 }, () => 'from memory'),
    ]);
  });
});
