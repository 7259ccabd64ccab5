import { describe, expect, test } from 'vitest';
import { readReading } from '../../../src/core/session/read-reading.ts';
import type { Check } from '../../../src/core/tree/model.ts';
import { smallTree } from '../../helpers/tree.ts';

describe('several readings on one line', () => {
  const volts = smallTree().checks['volts'] as Check;
  const one = { quantity: 'voltage', unit: 'V', plausible: [0, 16], name: 'post' } as const;
  const drop = {
    ...volts,
    judge: 'difference',
    readings: [{ ...one }, { ...one, name: 'station' }],
    results: [
      { id: 'little', label: 'little', below: 0.2 },
      { id: 'much', label: 'much', from: 0.2 },
    ],
  } as unknown as Check;
  const cylinders = {
    ...volts,
    judge: 'each',
    each: 'cylinder',
    readings: [{ ...one }],
    reading: { ...volts.reading, uncertainty: 0.1 },
  } as unknown as Check;
  const read = (check: Check, reading: string, facts = {}, insist = false) => {
    const answered = readReading({ id: 'drop', check, today: {}, facts }, reading, insist);
    return answered.kind === 'refused' ? answered.problem : answered.shown;
  };

  test('each is kept beside what they come to, and the line as it was typed', () => {
    expect(read(drop, '12.55 12.30')).toEqual({
      check: 'drop',
      result: 'much',
      reading: { value: 0.25, unit: 'V', typed: '12.55 12.30' },
      readings: [
        { value: 12.55, unit: 'V' },
        { value: 12.3, unit: 'V' },
      ],
    });
    expect(read(drop, '12550mV 12400')).toMatchObject({
      result: 'little',
      reading: { value: 0.15, unit: 'V' },
      readings: [{ unit: 'mV' }, { value: 12_400, unit: 'mV' }],
    });
  });

  test('a difference near its limit is both, by the error of a difference', () => {
    // 0.205 V, off by 2 x 0.005 V + 0.8 %: 0.0116 V. 0.215 V lies 0.015 V off the limit.
    expect(read(drop, '12.505 12.3')).toMatchObject({ result: 'little', orResult: 'much' });
    expect(read(drop, '12.515 12.3')).toMatchObject({ result: 'much' });
    expect(read(drop, '12.515 12.3')).not.toHaveProperty('orResult');
  });

  test.each([
    [drop, '12.55', {}, '1 reading typed, wanted 2: post, station.'],
    [drop, '12.5 12.4 12.3', {}, '3 readings typed, wanted 2: post, station.'],
    [cylinders, '12 12 12', { cylinders: 'four' }, '3 readings typed, wanted 4, one a cylinder.'],
    [cylinders, '12', {}, '1 reading typed, wanted one a cylinder.'],
  ])('a wrong count is one clear line', (check, typed, facts, message) => {
    expect(read(check, typed, facts)).toMatchObject({
      code: 'reading-count',
      message,
      value: typed,
    });
  });

  test('of each by itself the one furthest from healthy is told', () => {
    expect(read(cylinders, '13 13 1 13', { cylinders: 'four' })).toMatchObject({
      result: 'dead',
      reading: { value: 1, unit: 'V' },
    });
    // 12.05 V may be just under 12 V, and nothing else is wrong.
    expect(read(cylinders, '13 12.05 13 13', { cylinders: 'four' })).toMatchObject({
      result: 'full',
      orResult: 'low',
      reading: { value: 12.05 },
    });
    expect(read(cylinders, '11 12.05 9 13', { cylinders: 'four' })).toMatchObject({
      result: 'low',
      reading: { value: 9 },
    });
  });

  test('an unlikely one among them is asked about, and so is what they come to', () => {
    expect(read(drop, '12.5 24')).toMatchObject({
      code: 'implausible',
      message: expect.stringMatching(/^24 V lies outside 0 to 16 V/) as unknown,
    });
    expect(read(drop, '12.3 12.5')).toMatchObject({
      code: 'implausible',
      message: expect.stringMatching(/^12.3 12.5, judged as -0.2 V, lies outside/) as unknown,
    });
    expect(read(drop, '12.3 12.5', {}, true)).toMatchObject({ result: 'little', insisted: true });
    expect(read(drop, '-12.3 12.5')).toMatchObject({ code: 'reading-minus' });
  });

  test('what the meter cannot show is kept as it was typed and counts as the outermost band', () => {
    expect(read(volts, ' OL')).toEqual({ check: 'drop', result: 'full', beyond: ' OL' });
    expect(read(drop, 'OL 12')).toEqual({
      check: 'drop',
      result: 'much',
      readings: [{ beyond: 'OL' }, { value: 12, unit: 'V' }],
    });
    expect(read(drop, 'OL open')).toMatchObject({ code: 'readings-not-compared' });
  });
});
