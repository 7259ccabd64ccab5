import { describe, expect, test } from 'vitest';
import {
  batteryCharge,
  chargeAtGravity,
  chargeBand,
  voltsAtCharge,
} from '../../../../src/core/trade/figures/battery/charge.ts';
import {
  chargingVoltage,
  daysToNoStart,
  endOfCharge,
  hydrogenLitres,
  standingDrain,
} from '../../../../src/core/trade/figures/battery/keep.ts';
import {
  loadTest,
  loadTestFloor,
  reserveCapacity,
} from '../../../../src/core/trade/figures/battery/load.ts';
import {
  cellDifference,
  cellSpread,
  electrolyte,
  freezingPoint,
  hydrometerCorrection,
} from '../../../../src/core/trade/figures/battery/electrolyte.ts';

describe('battery figures', () => {
  // The worked examples of the doc blocks; sources stand there.
  test.each([
    ['volts at 75 %', voltsAtCharge(75, '12'), 12.45, 9],
    ['volts at 75 %, 6 V', voltsAtCharge(75, '6'), 6.225, 9],
    ['charge at gravity 1.19', chargeAtGravity(1.19), 50, 9],
    ['hydrometer correction at 30 F', hydrometerCorrection(30), -0.02, 9],
    ['freezing point at 1.25, F', freezingPoint(1.25), -62, 9],
    ['cells 1.265 and 1.23', cellDifference([1.265, 1.23]), 0.035, 9],
    ['load test at 30 F, V', loadTestFloor(30, '12'), 9.1, 9],
    ['load test at 30 F, 6 V', loadTestFloor(30, '6'), 4.55, 9],
    ['load test at 100 F counts as at 70 F', loadTestFloor(100, '12'), 9.6, 9],
    ['90 minutes of reserve, Ah', reserveCapacity(90), 37.5, 9],
    ['50 mA from 60 Ah, days', daysToNoStart(50, 60, 40), 20, 9],
    ['end of charge at 75 F, V', endOfCharge(75), 14.4, 9],
    ['end of charge at -18 F goes on by 18 mV/K, V', endOfCharge(-18), 15.28, 9],
    ['hydrogen of 1 Ah, one cell, 25 C, l', hydrogenLitres(1, 1, 25), 0.4564, 3],
  ])('%s', (_, got, want, digits) => {
    expect(got).toBeCloseTo(want, digits);
  });

  test('charge is told as a band, wide where the published scales differ', () => {
    expect(chargeBand(12.24, '12')).toEqual({ middle: 50, low: 50, high: 55 });
    expect(chargeBand(6.1, '6')).toEqual({ middle: 45, low: 40, high: 50 });
    expect(chargeBand(13.5, '12')).toEqual({ middle: 100, low: 95, high: 100 });
    expect(chargeBand(11.6, '12')).toEqual({ middle: 0, low: 0, high: 5 });
  });

  // The widely copied table that gives -16 F at 1.155 is unsafe (discrepancy list, number 4).
  test('a nearly flat battery is not said to be safe at 0 F', () => {
    expect(freezingPoint(1.155)).toBeGreaterThan(0);
    expect(freezingPoint(1.12)).toBeGreaterThan(10);
  });

  test.each([
    ['a surface charge', { volts: 13.2 }, 'Surface charge'],
    ['a dead cell', { volts: 10.4 }, 'dead cell'],
    ['half charge', { volts: 12.2 }, 'Charge it before any load test'],
    ['full charge', { volts: 12.7 }, 'Charged 95 to 100 %. Good enough for a load test'],
    ['a 6 V battery', { volts: 6.3, battery: '6' }, 'Good enough for a load test'],
  ])('the verdict tells of %s', (_, inputs, words) => {
    expect(batteryCharge.run(inputs).verdict).toContain(words);
  });

  test.each([
    ['no volts', loadTest.run({}).verdict, 'Sound at 9.6 V or more'],
    ['volts that hold up', loadTest.run({ volts: 9.8 }).verdict, 'Holds up'],
    ['volts too low', loadTest.run({ volts: 9 }).verdict, 'Below 9.6 V'],
    ['a drain on a car with points', standingDrain.run({ drain: 40 }).verdict, 'find it'],
    ['a few mA', standingDrain.run({ drain: 3 }).verdict, 'No cause for worry'],
    ['charging too little', chargingVoltage.run({ volts: 12.5 }).verdict, 'too little'],
    ['charging too hard', chargingVoltage.run({ volts: 15.5 }).verdict, 'too hard'],
    ['charging well', chargingVoltage.run({ volts: 14.2 }).verdict, 'as it should'],
    ['uneven cells', cellSpread.run({ cells: [1.265, 1.22] }).verdict, 'worn out'],
    ['even cells', cellSpread.run({ cells: [1.265, 1.26] }).verdict, 'agree'],
    ['cold acid', electrolyte.run({ gravity: 1.2 }).verdict, 'Freezes at about -17 F'],
  ])('the verdict on %s', (_, verdict, words) => {
    expect(verdict).toContain(words);
  });

  test('the load to set comes from CCA, failing that from the capacity', () => {
    const loads = [{ cca: 400 }, { capacity: 60 }, {}].map(
      (inputs) => loadTest.run(inputs).outputs['load']?.value,
    );

    expect(loads).toEqual([200, 180, undefined]);
  });

  test.each([
    ['no cells', () => cellDifference([]), 'there are no readings'],
    ['a drain of nothing', () => daysToNoStart(0, 50, 40), 'drain 0 mA is outside'],
    ['a hot battery', () => loadTestFloor(200, '12'), 'temperature 200 F is outside 0 to 120 F'],
    ['acid like water', () => freezingPoint(0.9), 'gravity 0.9 is outside 1 to 1.3'],
  ])('%s is refused', (_, run, words) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(words);
  });
});
