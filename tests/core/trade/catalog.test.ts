import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { figures, findFigure } from '../../../src/core/trade/catalog.ts';
import type { InputValues } from '../../../src/core/trade/figure-inputs.ts';
import type { Figure } from '../../../src/core/trade/figure.ts';
import type { FigureInput } from '../../../src/core/trade/figure-input.ts';
import { isQuantity } from '../../../src/core/trade/units/quantities.ts';
import { runFigure } from '../../../src/core/trade/run-figure.ts';
import { findUnit } from '../../../src/core/trade/units/units.ts';

const asked =
  'wire-resistance wire-size voltage-drop joint-heat fuse-link wire-current battery-charge ' +
  'electrolyte load-test standing-drain charging-voltage reserve air-pressure vacuum-at-altitude ' +
  'cranking-compression compression-spread leakage dwell timing-mark coil-current spark-timing ' +
  'lambda mixture idle-co fuel-pump boiling-point coolant-freeze lamp-current charge-balance ' +
  'road-speed stopping convert';

/** Values in and around an input's range, and what is no number at all. */
function anyInput(input: FigureInput): fc.Arbitrary<InputValues[string]> {
  if (input.values !== undefined) return fc.constantFrom(...input.values, 'nothing like it');
  if (input.quantity === 'text') return fc.constantFrom('V', 'mV', 'psi', '275/60R15', '', 'x');
  const { low = -1e3, high = 1e6 } = input.range ?? {};
  const inside = fc.double({ min: low, max: high, noNaN: true });
  const odd = fc.constantFrom(
    Number.NaN,
    Number.POSITIVE_INFINITY,
    -1e308,
    1e308,
    0,
    -1,
    low,
    high,
  );
  const single = fc.oneof({ weight: 9, arbitrary: inside }, { weight: 1, arbitrary: odd });
  return input.list === true ? fc.array(single, { maxLength: 8 }) : single;
}

function anyInputs(figure: Figure): fc.Arbitrary<InputValues> {
  const fields = Object.entries(figure.inputs).map(
    ([key, input]) => [key, anyInput(input)] as const,
  );
  return fc.record(Object.fromEntries(fields), { requiredKeys: [] });
}

/** `finite`, `range` for a RangeError that says something, or what else came out. */
function outcome(figure: Figure, inputs: InputValues): string {
  try {
    const { outputs } = figure.run(inputs);
    const odd = Object.entries(outputs).filter(([, { value }]) => !Number.isFinite(value));
    const negative = Object.values(outputs).some(({ value, unit }) => unit === 'ohm' && value < 0);
    return odd.length > 0 || negative ? JSON.stringify({ inputs, outputs }) : 'finite';
  } catch (error) {
    if (error instanceof RangeError && error.message.length > 10) return 'range';
    return `${JSON.stringify(inputs)}: ${String(error)}`;
  }
}

describe('the catalog of figures', () => {
  test('holds every figure that was asked for', () => {
    const missing = asked.split(' ').filter((name) => findFigure(name) === undefined);

    expect(missing).toEqual([]);
  });

  test('no name is there twice', () => {
    const names = figures.map((figure) => figure.name);

    expect(names.filter((name, place) => names.indexOf(name) !== place)).toEqual([]);
  });

  test.each(figures.map((figure) => [figure.name, figure] as const))(
    '%s tells what it is, its range, source and mark',
    (_, figure) => {
      const told = [figure.family, figure.about, figure.formula, figure.range, figure.source];

      expect(told.filter((text) => text.length < 3)).toEqual([]);
      expect(Object.keys(figure.outputs)[0]).toBe('result');
    },
  );

  test.each(figures.map((figure) => [figure.name, figure] as const))(
    'the inputs of %s have units of their quantity and presets in range',
    (_, figure) => {
      const wrong = Object.entries(figure.inputs).filter(
        ([, { quantity, unit }]) => isQuantity(quantity) && findUnit(quantity, unit)?.id !== unit,
      );
      const presets = Object.entries(figure.inputs).filter(
        ([, { default: preset, range }]) =>
          typeof preset === 'number' &&
          range !== undefined &&
          (preset < range.low || preset > range.high),
      );

      expect(wrong).toEqual([]);
      expect(presets).toEqual([]);
    },
  );

  test.each(figures.map((figure) => [figure.name, figure] as const))(
    '%s gives a finite answer or a RangeError, whatever it is given',
    (_, figure) => {
      fc.assert(
        fc.property(anyInputs(figure), (inputs) => {
          expect(['finite', 'range']).toContain(outcome(figure, inputs));
        }),
        { seed: 1042, numRuns: 400 },
      );
    },
  );

  test('whatever is typed, the answer is a run or problems, never a crash', () => {
    const words = fc.constantFrom('12', '-3 V', '1e999', 'NaN', '', '68 F', '1,250', '150,145 psi');
    const names = figures.map((figure) => figure.name);

    fc.assert(
      fc.property(fc.constantFrom(...names), fc.array(words, { maxLength: 6 }), (name, typed) => {
        const keys = Object.keys(findFigure(name)?.inputs ?? {});
        const run = runFigure(
          name,
          Object.fromEntries(typed.map((text, place) => [keys[place % keys.length] ?? 'x', text])),
        );
        const count =
          run.kind === 'bad' ? run.problems.length : Object.keys(run.value.outputs).length;
        expect(count).toBeGreaterThan(0);
      }),
      { seed: 7, numRuns: 3000 },
    );
  });
});
