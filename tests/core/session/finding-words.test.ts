import { expect, test } from 'vitest';
import { readWords, resultWords, standsAt } from '../../../src/core/session/finding-words.ts';
import type { Check } from '../../../src/core/tree/model.ts';
import { after } from '../../helpers/story.ts';
import { smallTree } from '../../helpers/tree.ts';

const volts = smallTree().checks['volts'] as Check;
const named: Check = {
  ...volts,
  results: volts.results.map((one) => ({
    ...one,
    label: { full: 'full: 12 V or more', low: 'half', dead: 'dead, or open' }[one.id] ?? one.label,
  })),
};
const V = (value: number) => ({ value, unit: 'V' });
const either = { result: 'full', orResult: 'low' };

test('of two that a reading may be, the one it stands in is told first', () => {
  expect(resultWords(named, { ...either, reading: V(11.95) })).toBe('half, or just full');
  expect(resultWords(named, { ...either, reading: V(12.05) })).toBe('full, or just half');
  expect(resultWords(named, { result: 'full', reading: V(12.6) })).toBe('full: 12 V or more');
});

test('where the first words do not tell two results apart, both are told whole', () => {
  const alike = {
    ...named,
    results: named.results.map((one) => ({ ...one, label: `V: ${one.id}` })),
  };

  expect(resultWords(alike, { ...either, reading: V(12.05) })).toBe('V: full, or just V: low');
});

test('of two that a person named nobody knows which it is nearer to', () => {
  expect(resultWords(named, either)).toBe('full: 12 V or more or half');
  expect(standsAt(named, either)).toBe(0);
});

test('a finding stands where its reading lies, within what was recorded', () => {
  expect(standsAt(named, { ...either, reading: V(11.95) })).toBe(1);
  // Judged by other limits then: the record counts.
  expect(standsAt(named, { ...either, reading: V(0.5) })).toBe(1);
  expect(standsAt(named, { result: 'full', reading: V(0.5) })).toBe(0);
  expect(
    standsAt(named, { ...either, reading: V(11.8), standard: { ...V(12.1), under: 'at 70 F' } }),
  ).toBe(0);
  expect(standsAt(named, { result: 'gone' })).toBe(-1);
});

test('the way goes on from the band that a reading near its limit stands in', () => {
  const dueAfter = (reading: string) =>
    after([
      { do: 'find', check: 'lamp', result: 'dark' },
      { do: 'find', check: 'look', result: 'whole' },
      { do: 'find', check: 'volts', reading },
    ]).story.due;

  expect(dueAfter('11.95')).toEqual({ kind: 'named', cause: 'wire' });
  expect(dueAfter('12.05')).toEqual({ kind: 'stop', reason: 'Neither fits.' });
});

test.each([
  ['difference', '12.55 and 12.3 V, 0.25 V between them'],
  ['spread', '12.55 and 12.3 V, 0.25 V from lowest to highest'],
  ['lowest', '12.55 and 12.3 V, the lowest 0.25 V'],
  ['each', '12.55 and 12.3 V, the worst 0.25 V'],
  ['compression-spread', '12.55 and 12.3 V, 0.25 V as judged'],
])('several readings judged by %s are told with what they come to', (judge, words) => {
  const readings = [{ ...volts.reading, name: 'post' }];
  const check = { ...volts, judge, readings } as Check;

  expect(readWords(check, { result: 'low', reading: V(0.25), readings: [V(12.55), V(12.3)] })).toBe(
    words,
  );
});

test('what a meter shows beyond its range is told as it was typed', () => {
  expect(readWords(volts, { result: 'full', beyond: ' OL ' })).toBe('OL');
  expect(readWords(volts, { result: 'full', readings: [{ beyond: 'OL' }, V(12)] })).toBe(
    'OL and 12 V',
  );
  expect(readWords(volts, { result: 'full', readings: [V(12), { value: 400, unit: 'mV' }] })).toBe(
    '12 V and 400 mV',
  );
});
