import { expect, test } from 'vitest';
import { parseOne, parseSeveral, sizeOf } from '../../../../src/core/trade/units/taken.ts';

const volts = { quantity: 'voltage', unit: 'V', plausible: [0, 16] as [number, number] } as const;
const ohms = { quantity: 'resistance', unit: 'ohm' } as const;
const V = (value: number, unit = 'V') => ({ value, unit });

test.each(['OL', 'ol', 'O.L.', 'open', 'Open', 'over', ' OVER '])(
  '"%s" is what a meter shows beyond its range, kept as typed',
  (typed) => {
    expect(parseOne(typed, ohms)).toEqual({ kind: 'good', value: { beyond: typed.trim() } });
  },
);

test.each(['opened', 'olive', 'over 3', 'OL OL', 'much'])('"%s" is not', (typed) => {
  expect(parseOne(typed, ohms).kind).toBe('bad');
});

test.each([
  ['12.55 12.30', [V(12.55), V(12.3)]],
  ['12550 mV 12300', [V(12_550, 'mV'), V(12_300, 'mV')]],
  ['OL 12.3', [{ beyond: 'OL' }, V(12.3)]],
  ['12.3 V open; 11', [V(12.3), { beyond: 'open' }, V(11)]],
  ['12300 mV OL 11800', [V(12_300, 'mV'), { beyond: 'OL' }, V(11_800, 'mV')]],
  ['over', [{ beyond: 'over' }]],
])('"%s" is read in its order, units carried to the rest', (typed, value) => {
  expect(parseSeveral(typed, volts)).toEqual({ kind: 'good', value });
});

test('what is no reading is one problem, and nothing is none', () => {
  expect(parseSeveral('12.3 much', volts)).toMatchObject({ problems: [{}] });
  expect(parseSeveral(' ; ', volts)).toMatchObject({ kind: 'bad' });
});

test('beyond the range is larger than every number', () => {
  expect([{ beyond: 'OL' }, V(3)].map(sizeOf)).toEqual([Infinity, 3]);
});
