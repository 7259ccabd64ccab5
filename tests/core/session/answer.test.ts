import { describe, expect, test } from 'vitest';
import { readAnswer, type Answer } from '../../../src/core/session/answer.ts';
import type { Check } from '../../../src/core/tree/model.ts';
import { smallTree } from '../../helpers/tree.ts';

const answer = (id: string, given: Answer) => {
  const check = smallTree().checks[id];
  if (check === undefined) throw new Error(`the small tree has no ${id}`);
  const read = readAnswer({ id, check, today: {}, facts: {} }, given);
  return read.kind === 'refused' ? read.problem : read.shown;
};

describe('answering a check', () => {
  test.each([
    ['a result', 'look', { result: 'burnt' }, { check: 'look', result: 'burnt' }],
    ['a result of a measured check', 'volts', { result: 'low' }, { check: 'volts', result: 'low' }],
    [
      'one of two, healthier first',
      'volts',
      { result: 'dead', orResult: 'full' },
      { check: 'volts', result: 'full', orResult: 'dead' },
    ],
    [
      'one of two in order',
      'volts',
      { result: 'full', orResult: 'low' },
      { check: 'volts', result: 'full', orResult: 'low' },
    ],
    [
      'one of two that are the same',
      'volts',
      { result: 'low', orResult: 'low' },
      { check: 'volts', result: 'low' },
    ],
    [
      'a reading as a number',
      'volts',
      { reading: 12.4 },
      { check: 'volts', result: 'full', reading: { value: 12.4, unit: 'V', typed: '12.4' } },
    ],
    [
      'a reading as typed',
      'volts',
      { reading: ' 1,2 V' },
      { check: 'volts', result: 'dead', reading: { value: 1.2, unit: 'V', typed: ' 1,2 V' } },
    ],
    [
      'a reading in another unit',
      'volts',
      { reading: '3500 mV' },
      { check: 'volts', result: 'low', reading: { value: 3500, unit: 'mV', typed: '3500 mV' } },
    ],
    [
      'an implausible reading insisted on',
      'volts',
      { reading: 24, insist: true },
      {
        check: 'volts',
        result: 'full',
        reading: { value: 24, unit: 'V', typed: '24' },
        insisted: true,
      },
    ],
    [
      'a plausible one insisted on all the same',
      'volts',
      { reading: 12, insist: true },
      {
        check: 'volts',
        result: 'full',
        orResult: 'low',
        reading: { value: 12, unit: 'V', typed: '12' },
      },
    ],
  ])('%s is taken', (_, id, given, shown) => {
    expect(answer(id, given)).toEqual(shown);
  });

  test.each([
    ['nothing', 'look', {}, ['no-answer', 'Give "result" or "reading".']],
    [
      'a result it has not',
      'look',
      { result: 'gone' },
      ['unknown-result', 'Its results: whole, burnt.'],
    ],
    [
      'a second result it has not',
      'look',
      { result: 'whole', orResult: 'gone' },
      ['unknown-result', 'Its results: whole, burnt.'],
    ],
    [
      'a reading where none is taken',
      'look',
      { reading: 12 },
      ['no-reading-here', 'Give one of its results: whole, burnt.'],
    ],
    [
      'a reading that is none',
      'volts',
      { reading: 'much' },
      ['reading-not-a-number', expect.stringContaining('V')],
    ],
    [
      'a reading of something else',
      'volts',
      { reading: '12 psi' },
      ['reading-unit-wrong', expect.stringContaining('mV')],
    ],
    [
      'an implausible reading',
      'volts',
      { reading: 124 },
      ['implausible', 'Look at the meter and its range again; if it is really so, insist.'],
    ],
    [
      'an implausible reading in another unit',
      'volts',
      { reading: '24500 mV' },
      ['implausible', expect.stringContaining('insist')],
    ],
  ] as const)('%s is refused with a mend', (_, id, given, [code, mend]) => {
    expect(answer(id, given)).toMatchObject({
      code,
      mend,
      message: expect.stringMatching(/\.$/) as unknown,
    });
  });

  test('a minus asks after probes and ground, and is taken as it stands when insisted on', () => {
    expect(answer('volts', { reading: '-12.4 V' })).toEqual({
      code: 'reading-minus',
      message: '-12.4 V has a minus: are the probes swapped, or is it positive ground?',
      mend: 'If so, type it without the minus; if it is truly below zero, insist.',
      value: '-12.4 V',
    });
    expect(answer('volts', { reading: '-12.4 V', insist: true })).toMatchObject({
      result: 'dead',
      reading: { value: -12.4, unit: 'V' },
      insisted: true,
    });
  });

  test('a refusal names the very thing that was wrong', () => {
    expect(answer('look', { result: 'whole', orResult: 'gone' })).toMatchObject({ value: 'gone' });
    expect(answer('volts', { reading: '124' })).toMatchObject({
      value: '124',
      message: '124 lies outside 0 to 16 V, which such a reading can hardly be.',
    });
  });

  const vacuum = {
    ...(smallTree().checks['volts'] as Check),
    reading: {
      quantity: 'vacuum' as const,
      unit: 'inHg',
      plausible: [0, 30] as [number, number],
      standard: 'vacuum-at-altitude',
    },
  };

  test('a reading that depends on the place is judged as it would be at sea level', () => {
    // Standard atmosphere at 5000 ft: 24.90 inHg, so 5.02 inHg less than at sea level
    // (US Standard Atmosphere 1976, from memory): 8 inHg there count as 13.
    const read = readAnswer(
      { id: 'vacuum', check: vacuum, today: { altitude: 1524 }, facts: {} },
      { reading: 8 },
    );

    expect(read).toMatchObject({
      shown: {
        result: 'full',
        reading: { value: 8, unit: 'inHg' },
        standard: {
          value: expect.closeTo(13.02, 1) as unknown,
          unit: 'inHg',
          under: 'at sea level',
        },
      },
    });
  });

  test('where the place is not known it is judged as it was read, and that is told', () => {
    const read = readAnswer({ id: 'vacuum', check: vacuum, today: {}, facts: {} }, { reading: 8 });

    expect(read).toMatchObject({ needs: 'altitude', shown: { result: 'low' } });
    expect(read.kind === 'shown' && read.shown.standard).toBeUndefined();
  });

  test('what no vehicle can show, once corrected for the place, is asked about', () => {
    // 5200 ft: 24.7 inHg of air is all there is to draw away.
    const asked = { id: 'vacuum', check: vacuum, today: { altitude: 1585 }, facts: {} };

    expect(readAnswer(asked, { reading: 26 })).toMatchObject({
      problem: {
        code: 'implausible',
        message:
          '26, corrected 31.2 inHg, lies outside 0 to 30 inHg, which such a reading can hardly be.',
      },
    });
    expect(readAnswer(asked, { reading: 26, insist: true })).toMatchObject({
      shown: { insisted: true },
    });
  });

  test('a load test exactly at its limit holds, at every temperature of the table', () => {
    // Trade table, common practice but for the row of 70 F; bands from 9.6 V told at 70 F.
    const load = {
      ...(smallTree().checks['volts'] as Check),
      reading: {
        quantity: 'voltage' as const,
        unit: 'V',
        plausible: [0, 16] as [number, number],
        standard: 'load-test',
      },
    };
    const results = load.results.map((one) => (one.id === 'full' ? { ...one, from: 9.6 } : one));
    const rows = [
      [0, 8.5],
      [10, 8.7],
      [20, 8.9],
      [30, 9.1],
      [40, 9.3],
      [50, 9.4],
      [60, 9.5],
      [70, 9.6],
    ] as const;
    const shown = rows.map(([fahrenheit, reading]) =>
      readAnswer(
        {
          id: 'load',
          check: { ...load, results },
          today: { temperature: (fahrenheit - 32) / 1.8, volts: 12 },
          facts: {},
        },
        { reading },
      ),
    );

    expect(shown.filter((one) => one.kind !== 'shown' || one.shown.result !== 'full')).toEqual([]);
  });
});
