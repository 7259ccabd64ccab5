import { expect, test } from 'vitest';
import {
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
    figurePage(name, knownInputs(name, known))
      .fields.filter(({ typed }) => typed !== '')
      .map(({ key, typed }) => [key, typed]),
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
  const page = figurePage('vacuum-at-altitude', {
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
  expect(() => figurePage('no-such-figure')).toThrow('no figure no-such-figure');
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
  expect(noteOf(firstRun)).toBe('load test: (battery 12, readings 9.8 10 V, count 6).');
});
