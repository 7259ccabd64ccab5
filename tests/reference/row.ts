import { showProblem } from '../../src/core/problem.ts';
import { runFigure } from '../../src/core/trade/run-figure.ts';
import { convert, quantitiesOf } from '../../src/core/trade/units/units.ts';

/** One row of a reference file: a value that somebody else printed or worked out. */
export type Row = {
  readonly id: string;
  readonly quantity: string;
  readonly formula: string;
  readonly inputs: Readonly<Record<string, unknown>>;
  readonly expected: number;
  readonly tolerance: number;
  readonly unit: string;
  readonly source: string;
  readonly provenance: string;
  readonly kind: string;
};

/** What an input of a figure is given as; undefined ones are left out. */
export type Texts = Readonly<Record<string, string | number | undefined>>;

/** Asks a figure and gives one output in the row's unit where that is a unit of the same quantity. */
export type Ask = (figure: string, texts: Texts, output?: string) => number;

/**
 * One family of rows: what its ids look like and how its inputs become a question. The answer is
 * undefined where the row holds nothing that a figure could be asked.
 */
export type Family = {
  readonly ids: RegExp;
  readonly answer: (row: Row, ask: Ask, tail: readonly string[]) => number | undefined;
};

/** Words of the rows for units that we write otherwise. */
const unitWords: Readonly<Record<string, string>> = {
  'inHg (conventional)': 'inHg',
  'crank deg': 'deg',
  'cam deg': 'deg',
  '% vol': '%',
  'ppm hexane': 'ppm',
  psia: 'psi',
  psig: 'psi',
  'V AC': 'V',
  'N m': 'Nm',
  'ohm/1000 ft': 'ohm/1000ft',
  'fraction of rating': '1',
};

export function unitOf(row: Row): string {
  return unitWords[row.unit] ?? row.unit;
}

/** An input as a number, or undefined when the row has it not. */
export function number(row: Row, ...keys: readonly string[]): number | undefined {
  const values = keys.map((key) => row.inputs[key]);
  return values.find((value) => typeof value === 'number');
}

/** The same as a text with its unit, ready to be typed. */
export function text(row: Row, unit: string, ...keys: readonly string[]): string | undefined {
  const value = number(row, ...keys);
  return value === undefined ? undefined : `${value} ${unit}`;
}

/** A temperature of the row, in whichever scale its key tells. */
export function heat(row: Row): string | undefined {
  return (
    text(row, 'F', 'temp_F', 'temperature_F', 'F') ??
    text(row, 'C', 'temperature_C', 'temp_C', 't_C', 'Ta_C', 'C') ??
    text(row, 'K', 'T_K')
  );
}

export function altitude(row: Row): string | undefined {
  return text(row, 'ft', 'altitude_ft') ?? text(row, 'm', 'altitude_m');
}

/** The way a row's gauge is written: `0000`, `16`. */
export function gauge(row: Row): string | undefined {
  const { awg } = row.inputs;
  return typeof awg === 'string' ? awg : text(row, '', 'awg', 'wire_awg')?.trim();
}

/** Asks on behalf of one row; throws with the figure's own words when it refuses. */
export function asker(row: Row): Ask {
  return (figure, texts, output = 'result') => {
    const typed = Object.entries(texts).flatMap(([key, value]) =>
      value === undefined ? [] : [[key, String(value)] as const],
    );
    const run = runFigure(figure, Object.fromEntries(typed));
    if (run.kind === 'bad') throw new Error(run.problems.map(showProblem).join(' '));
    const amount = run.value.outputs[output];
    if (amount === undefined) throw new Error(`${figure} gave no ${output}.`);
    return inUnitOf(amount.value, amount.unit, unitOf(row));
  };
}

function inUnitOf(value: number, from: string, to: string): number {
  if (from === to) return value;
  const shared = quantitiesOf(from).some((quantity) => quantitiesOf(to).includes(quantity));
  return shared ? convert(value, from, to) : value;
}
