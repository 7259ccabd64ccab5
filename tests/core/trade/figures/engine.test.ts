import { describe, expect, test } from 'vitest';
import {
  airPressure,
  densityRatio,
  vacuumAt,
  vacuumAtAltitude,
  vacuumLost,
} from '../../../../src/core/trade/figures/air.ts';
import {
  coilCurrent,
  coilCurrentAt,
  secondaryVolts,
  steadyCurrent,
  timeConstant,
} from '../../../../src/core/trade/figures/coil.ts';
import {
  compressionSpread,
  crankingPressure,
  spreadOf,
  sweptVolume,
} from '../../../../src/core/trade/figures/compression.ts';
import {
  closedTime,
  dwell,
  dwellAngle,
  dwellPercent,
  timingArc,
  totalAdvance,
} from '../../../../src/core/trade/figures/dwell.ts';
import { leakage, leakageOf } from '../../../../src/core/trade/figures/battery/leakage.ts';

const coil = { volts: 13.8, coil: 3, ballast: 0 };

describe('air, compression and ignition', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['air at 5000 ft, kPa', airPressure(5000), 84.307, 3],
    ['density at 5000 ft', densityRatio(5000), 0.8617, 4],
    ['vacuum lost at 5000 ft, inHg', vacuumLost(5000), 5.03, 2],
    ['18 inHg at 5000 ft', vacuumAt(5000, 18), 12.98, 1],
    ['ratio 9, n 1.3, psi', crankingPressure(9, 1.3, 14.7), 241.06, 1],
    ['spread of 160, 150, 120, 155', spreadOf([160, 150, 120, 155]), 25, 9],
    ['4 x 3.5 in, 8 cylinders, in3', sweptVolume(4, 3.5, 8), 351.9, 1],
    ['80 psi, 60 held', leakageOf(80, 60), 25, 9],
    ['60 % of four lobes', dwellAngle(4, 60), 54, 9],
    ['30 degrees of eight lobes', dwellPercent(8, 30), 66.67, 2],
    ['30 degrees at 1000 rpm, ms', closedTime(30, 1000), 10, 9],
    ['10 degrees on 6 in', timingArc(6, 10), 0.5236, 4],
    ['8 + 2 x 12 + 2 x 8', totalAdvance(8, 12, 8), 48, 9],
    ['coil after 3 ms, A', coilCurrentAt(coil, 9, 3), 2.908, 3],
    ['12 V on 1.5 + 1.5 ohm, A', steadyCurrent({ volts: 12, coil: 1.5, ballast: 1.5 }), 4, 9],
    ['9 mH and 3 ohm, ms', timeConstant(coil, 9), 3, 9],
    ['200 V and 100 turns', secondaryVolts(200, 100), 20_000, 9],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  // Numerical hydrostatics as a second way: dp/dh = -p g M / (R T), US Standard Atmosphere 1976.
  test('air pressure agrees with the weight of the air above, summed in small steps', () => {
    const step = 0.3048;
    let pressure = 101.325;
    for (let feet = 0; feet < 10_000; feet += 1) {
      const kelvin = 288.15 - 0.0065 * (feet + 0.5) * step;
      pressure *= Math.exp((-9.80665 * 0.0289644 * step) / (8.31432 * kelvin));
    }

    expect(Math.abs(airPressure(10_000) / pressure - 1)).toBeLessThan(1e-5);
  });

  // Euler steps as a second way: dI/dt = (V - I R) / L.
  test('coil current agrees with its equation, followed in small steps', () => {
    let amps = 0;
    for (let step = 0; step < 30_000; step += 1) amps += ((13.8 - amps * 3) / 9) * 1e-4;

    expect(Math.abs(coilCurrentAt(coil, 9, 3) - amps)).toBeLessThan(1e-4);
  });

  test.each([
    ['low', { reading: 10 }, /^Low: 17 inHg to 22 inHg/],
    ['high', { reading: 24 }, /^High/],
    ['healthy', { reading: 14, altitude: 5000 }, /^Healthy: 12 inHg to 17 inHg/],
  ])('a vacuum reading is %s for the place', (_, inputs, words) => {
    expect(vacuumAtAltitude.run(inputs).verdict).toMatch(words);
  });

  test.each([
    ['all even', { readings: [150, 145, 148, 150] }, 'All cylinders are above'],
    ['one low', { readings: [150, 145, 90, 150] }, 'Cylinder 3 is below 112.5 psi'],
    [
      'one low, better with oil',
      { readings: [150, 90], wet: [155, 140] },
      'changed by 50 psi: leans to rings',
    ],
    ['one low, oil no help', { readings: [150, 90], wet: [155, 92] }, 'leans to a valve'],
  ])('compression: %s', (_, inputs, words) => {
    expect(compressionSpread.run(inputs).verdict).toContain(words);
  });

  test.each([
    [5, 'Good.'],
    [15, 'Fair. Listen'],
    [25, 'Poor. Listen'],
    [40, 'Bad. Listen'],
  ])('leakage of %d %% is judged', (leak, words) => {
    expect(leakage.run({ leak }).verdict).toContain(words);
  });

  test('too much coil current asks for the ballast', () => {
    expect(coilCurrent.run({ volts: 14, coil: 1.5 }).verdict).toContain('is the ballast there?');
    expect(coilCurrent.run({}).verdict).toContain('Points live with this');
  });

  test('usual dwell is told where it is known', () => {
    expect(dwell.run({ cylinders: 8, percent: 67 }).verdict).toContain(
      'Near what is usual: about 30 deg',
    );
    expect(dwell.run({ cylinders: 4, dwell: 70 }).verdict).toContain('the gap is narrow');
    expect(dwell.run({ cylinders: 4, dwell: 40 }).verdict).toContain('the gap is wide');
    expect(dwell.run({ cylinders: 3, percent: 60 }).verdict).not.toContain('usual');
  });

  test.each([
    ['no readings', () => spreadOf([]), 'none is above 0 psi'],
    ['dead cylinders only', () => spreadOf([0, 0]), 'none is above 0 psi'],
    ['more held than supplied', () => leakageOf(60, 80), 'leakage -33.3333 % is outside'],
    ['half a cylinder', () => dwellAngle(4.5, 60), 'cylinders 4.5 is not a whole number'],
    ['more dwell than a lobe', () => dwellPercent(8, 50), 'dwell 50 deg is outside 0 to 45 deg'],
    ['percent and dwell', () => dwell.run({ cylinders: 4, percent: 5, dwell: 5 }), 'give either'],
    ['no vacuum left', () => vacuumAt(30_000, 5), 'vacuum here'],
    ['the edge of space', () => airPressure(90_000), 'altitude 90000 ft is outside -2000 to 36000'],
    [
      'a coil without resistance',
      () => steadyCurrent({ ...coil, coil: 0 }),
      'coil 0 ohm is outside',
    ],
  ])('%s is refused', (_, run, words) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(words);
  });
});
