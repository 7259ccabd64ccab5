import { describe, expect, test } from 'vitest';
import { tireOf } from '../../src/core/trade/figures/tires.ts';
import { bundleShare, hotShare } from '../../src/core/trade/figures/wire/bundle.ts';
import { runFigure } from '../../src/core/trade/run-figure.ts';

describe('figures of daily use against what others print', () => {
  // Read in a copy of NEC 2014 table 310.15(B)(3)(a): buildmyowncabin.com/nec.
  test.each([
    [4, 80],
    [6, 80],
    [7, 70],
    [9, 70],
    [10, 50],
    [20, 50],
    [21, 45],
    [30, 45],
    [31, 40],
    [40, 40],
    [41, 35],
  ])('%i loaded wires in a bundle carry %i %% [published, read]', (count, percent) => {
    expect(bundleShare(count) * 100).toBeCloseTo(percent, 9);
  });

  // NEC table 310.15(B)(2)(a), correction for air other than 30 C; its columns are printed to 0.01.
  test.each([
    [60, 35, 0.91],
    [60, 40, 0.82],
    [60, 45, 0.71],
    [60, 50, 0.58],
    [75, 40, 0.88],
    [75, 50, 0.75],
    [90, 40, 0.91],
    [90, 50, 0.82],
    [90, 60, 0.71],
  ])('%i C insulation in %i C air keeps %f [published, memory]', (insulation, air, share) => {
    expect(hotShare(insulation, air)).toBeCloseTo(share, 2);
  });

  // New tires of those sizes as standards of the time have them, mm; all from memory.
  test.each([
    ['155R13', 578],
    ['165R13', 596],
    ['175R14', 634],
    ['185R14', 650],
    ['165R15', 646],
    ['205/70R14', 644],
    ['5.60-15', 655],
    ['6.70-15', 706],
    ['7.75-14', 676],
    ['6.00-16', 716],
  ])('%s measures about %i mm [published, memory]', (size, millimetres) => {
    const found = tireOf(size).diameter * 25.4;

    expect(Math.abs(found / millimetres - 1)).toBeLessThan(0.025);
  });

  // 5 ft of AWG 2 lose 0.1172 V at 150 A: from the AWG table of a physics site, read.
  test('a starter is told by the drop along its cable [computed, read]', () => {
    const run = runFigure('starter-draw', { drop: '0.1172 V', gauge: '2', length: '5 ft' });
    const amps = run.kind === 'good' ? run.value.outputs['result']?.value : undefined;

    expect(amps).toBeCloseTo(150, 0);
  });

  // NIST SP 811: 235.2146 l/100km at one US mile to the gallon, read in copies of its table.
  test('fuel use by the factor of a published table [published, read]', () => {
    const run = runFigure('fuel-use', { distance: '235.2146 mi', fuel: '10 gal' });
    const metric = run.kind === 'good' ? run.value.outputs['metric']?.value : undefined;

    expect(metric).toBeCloseTo(10, 5);
  });
});
