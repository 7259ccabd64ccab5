import { textOf } from '../../../src/app/typing/typing.ts';
import { expect, test } from 'vitest';
import { figures } from '../../../src/core/trade/catalog.ts';
import { convert } from '../../../src/core/trade/units/units.ts';
import { isQuantity } from '../../../src/core/trade/units/quantities.ts';
import { inUsual, usualUnit } from '../../../src/core/trade/units/usual.ts';
import {
  fieldTrouble,
  figurePage,
  knownInputs,
  noteOf,
  resultLines,
  workOut,
} from '../../../src/app/pages/figure-page.ts';

const known = {
  conditions: {
    altitude: { value: 5200, unit: 'ft' },
    temperature: { value: -1, unit: 'C' },
  },
  facts: { volts: '12-volt', cylinders: 'six' },
};

const fields = (name: string) =>
  Object.fromEntries(
    figurePage(name, 'us', knownInputs(name, known))
      .fields.filter(({ typed }) => textOf(typed) !== '')
      .map(({ key, typed }) => [key, textOf(typed)]),
  );

test('a figure opened in a session holds what the session knows of its inputs', () => {
  expect(fields('vacuum-at-altitude')).toEqual({ altitude: '5200 ft' });
  expect(fields('load-test')).toEqual({ temperature: '-1 C', battery: '12' });
  expect(fields('dwell')).toEqual({ cylinders: '6' });
});

test('the air of the day is not taken for the heat of a fuel or a wire', () => {
  expect(fields('fuel-vapor')).toEqual({});
  expect(fields('wire-resistance')).toEqual({});
});

test('what is healthy here is healthy where the session is', () => {
  const page = figurePage('vacuum-at-altitude', 'us', {
    ...knownInputs('vacuum-at-altitude', known),
    reading: '15',
  });
  const run = workOut(page);

  expect(run.kind === 'good' ? run.value.verdict : '').toMatch(/^Healthy: 11\.8 inHg/);
});

test('a six-volt vehicle is judged as one', () => {
  expect(knownInputs('load-test', { conditions: {}, facts: { volts: '6-volt' } })).toEqual({
    battery: '6',
  });
});

test('a figure that is not there is a fault of the program', () => {
  expect(() => figurePage('no-such-figure', 'us')).toThrow('no figure no-such-figure');
});

const firstRun = {
  figure: 'load-test',
  inputs: {
    battery: { value: '12', unit: '' },
    readings: { value: [9.8, 10], unit: 'V' },
    count: { value: 6, unit: '1' },
  },
  outputs: {},
  source: 'a table',
  mark: 'published',
} as const;

test('what an answer rests on is told whole: words, several numbers, numbers without a unit', () => {
  expect(resultLines(firstRun)[0]).toBe('From: battery 12, readings 9.8 10 V, count 6');
  expect(resultLines(firstRun).at(-1)).toBe('Source: a table (published)');
});

test('a note of a figure without one result or verdict has none', () => {
  expect(noteOf(firstRun, 'us')).toBe('load test: (battery 12, readings 9.8 10 V, count 6).');
});

/** A figure with these texts in its fields. */
const typedIn = (name: string, units: 'us' | 'metric', typed: Readonly<Record<string, string>>) =>
  figurePage(name, units, typed);

test('metric numbers mean metric units, in and out', () => {
  const page = typedIn('boiling-point', 'metric', { cap: '1', altitude: '1600', glycol: '50' });
  const us = typedIn('boiling-point', 'us', { cap: '1 bar', altitude: '1600 m', glycol: '50' });
  const [run, same] = [workOut(page), workOut(us)];
  if (run.kind === 'bad' || same.kind === 'bad') throw new Error('not worked out');

  expect(page.fields.map(({ unit }) => unit)).toEqual(['bar', 'm', '%', 'bar']);
  expect(run.value.outputs).toEqual(same.value.outputs);
  expect(resultLines(run.value, 'metric')[0]).toMatch(/^Boils, cap holding: \d+(?:\.\d)? C$/);
  expect(resultLines(run.value, 'us')[0]).toMatch(/^Boils, cap holding: \d+(?:\.\d)? F$/);
});

test('a wrong field is named when it is left, whatever stands in the others', () => {
  const page = typedIn('displacement', 'us', { bore: '3 1/2 in', stroke: '80 V', cylinders: '4' });

  expect(page.fields.map((_field, at) => fieldTrouble(page, at)?.message)).toEqual([
    undefined,
    'stroke: "V" measures voltage, not length.',
    undefined,
  ]);
});

test('every unit of a figure has a usual one of the same kind and back again', () => {
  const units = figures.flatMap(({ inputs, outputs }) => [
    ...Object.values(inputs).flatMap(({ quantity, unit }) => (isQuantity(quantity) ? [unit] : [])),
    ...Object.values(outputs).map(({ unit }) => unit),
  ]);
  const turned = [...new Set(units)].filter((unit) => usualUnit(unit, 'metric') !== unit);

  expect(turned.length).toBeGreaterThan(8);
  for (const unit of turned) {
    const there = inUsual({ value: 300, unit }, 'metric');
    expect(convert(there.value, there.unit, unit)).toBeCloseTo(300, 9);
  }
});
