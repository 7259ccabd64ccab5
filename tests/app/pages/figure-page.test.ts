import { expect, test } from 'vitest';
import { figurePage, knownInputs, workOut } from '../../../src/app/pages/figure-page.ts';

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
