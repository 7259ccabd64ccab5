import { describe, expect, test } from 'vitest';
import {
  chargeBalance,
  chargeLeft,
  lampAmps,
  lampAmpsAt,
  lampCurrent,
} from '../../../../src/core/trade/figures/lamps.ts';
import {
  brakeEffort,
  enginePowerOf,
  roadSpeedOf,
  stoppingDistance,
} from '../../../../src/core/trade/figures/road.ts';
import { tireOf } from '../../../../src/core/trade/figures/tires.ts';
import { garageMinutes, limit } from '../../../../src/core/trade/figures/safety.ts';

describe('lamps, road and safety', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['60 W at 12.8 V, A', lampAmps(60, 12.8), 4.6875, 9],
    ['2.1 A lamp of 12.8 V at 6.4 V, A', lampAmpsAt({ amps: 2.1, volts: 12.8 }, 6.4), 1.434, 3],
    ['35 A less 22 A, A', chargeLeft(35, [10, 8, 4]), 9.5, 9],
    ['2500 rpm, 3.73, 26 in, mph', roadSpeedOf(2500, 3.73, 26), 51.84, 2],
    ['275/60R15, in', tireOf('275/60R15').diameter, 27.992, 3],
    ['30 mph, 50 %, 1 s, ft', stoppingDistance(30, 50, 1), 104.2, 1],
    ['150 ft-lb at 3500 rpm, hp', enginePowerOf(150, 3500), 99.96, 2],
    ['a closed garage, min', garageMinutes({ room: 60, flow: 5, co: 4.5, target: 200 }), 0.889, 3],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  test('what the machine cannot give the battery pays for', () => {
    expect(chargeBalance.run({ rating: 20, loads: [15, 10] }).verdict).toContain('battery pays');
    expect(chargeBalance.run({ rating: 30, ripple: 0.8 }).verdict).toContain('dead diode');
  });

  test('a lamp of the list knows its volts, another needs its watts', () => {
    expect(lampCurrent.run({ lamp: '1157-minor', actual: 12 }).outputs).toMatchObject({
      result: { value: 0.59, unit: 'A' },
      design: { value: 14, unit: 'V' },
    });
    expect(() => lampCurrent.run({})).toThrow('power is missing');
    expect(() => lampCurrent.run({ lamp: 'lantern' })).toThrow('lamp "lantern" is not one of');
  });

  test('brakes are held against the least allowed', () => {
    expect(brakeEffort.run({ effort: 400, weight: 1000 }).verdict).toContain('Below 50 %');
    expect(brakeEffort.run({ effort: 600, weight: 1000 }).verdict).toContain('At or above 50 %');
  });

  test('a limit tells its own unit, source and mark', () => {
    expect(limit.run({ name: 'garage-co-danger' })).toMatchObject({
      outputs: { result: { value: 1200, unit: 'ppm' } },
      source: 'NIOSH Pocket Guide',
      mark: 'from memory',
    });
  });

  test('a tire size that cannot be read is refused', () => {
    expect(() => tireOf('big')).toThrow('tire "big" is not a size such as 275/60R15');
  });
});
