import type { FigureInput } from './figure-input.ts';
import { inSpan } from './span.ts';

/** What a figure is run with: numbers in the units of its inputs, words, lists of numbers. */
export type InputValues = Readonly<Record<string, number | string | readonly number[] | undefined>>;

/** Reads a figure's inputs by key; each way checks what it gives out. */
export type InputReader = {
  /** A number that must be there. */
  readonly number: (key: string) => number;
  /** A number or undefined. */
  readonly maybe: (key: string) => number | undefined;
  /** One of the words of a choice, or a text. */
  readonly word: (key: string) => string;
  /** One or more numbers; none when the list may be left out. */
  readonly list: (key: string) => readonly number[];
};

type Inputs = Readonly<Record<string, FigureInput>>;

/** RangeError, naming input, value and range, on whatever is missing, no number or out of range. */
export function inputReader(inputs: Inputs, values: InputValues): InputReader {
  const given = (key: string): InputValues[string] => values[key] ?? inputs[key]?.default;
  const maybe = (key: string): number | undefined => {
    const value = given(key);
    return value === undefined ? undefined : checked(key, value, inputs[key]);
  };
  return {
    maybe,
    number: (key) => maybe(key) ?? missing(key),
    word: (key) => checkedWord(key, given(key), inputs[key]),
    list: (key) => checkedList(key, given(key), inputs[key]),
  };
}

function missing(key: string): never {
  throw new RangeError(`${key} is missing.`);
}

function checked(key: string, value: unknown, input?: FigureInput): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new RangeError(`${key} ${String(value)} is not a number.`);
  }
  return input?.range === undefined ? value : inSpan(value, input.range);
}

function checkedWord(key: string, value: unknown, input?: FigureInput): string {
  if (typeof value !== 'string') return missing(key);
  if (input?.values !== undefined && !input.values.includes(value)) {
    throw new RangeError(`${key} "${value}" is not one of ${input.values.join(', ')}.`);
  }
  return value;
}

function checkedList(key: string, value: unknown, input?: FigureInput): readonly number[] {
  if (value === undefined && input?.optional === true) return [];
  if (!Array.isArray(value) || value.length === 0) throw new RangeError(`${key} has no readings.`);
  return value.map((each: unknown) => checked(key, each, input));
}
