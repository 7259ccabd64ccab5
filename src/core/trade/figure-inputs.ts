import type { FigureInput } from './figure-input.ts';
import { inSpan } from './span.ts';

/** What a figure is run with: numbers in the units of its inputs, words, lists of numbers. */
export type InputValues = Readonly<Record<string, number | string | readonly number[] | undefined>>;

export type FigureInputs = Readonly<Record<string, FigureInput>>;

/** What a figure works with, by input: a choice gives one of its words, a list its numbers. */
export type Worked<Inputs extends FigureInputs> = {
  readonly [Key in keyof Inputs]: WorkedInput<Inputs[Key]>;
};

type WorkedInput<Input extends FigureInput> = Input extends {
  readonly quantity: 'choice';
  readonly values: readonly (infer Word)[];
}
  ? Word
  : Input extends { readonly quantity: 'text' }
    ? string
    : Input extends { readonly list: true }
      ? readonly number[]
      : Input extends { readonly optional: true }
        ? number | undefined
        : number;

/**
 * The values of all inputs, defaults filled in. A list that may be left out is empty then.
 * RangeError, naming input, value and range, on whatever is missing, no number or out of range.
 */
export function workedInputs<Inputs extends FigureInputs>(
  inputs: Inputs,
  values: InputValues,
): Worked<Inputs> {
  const worked = Object.entries(inputs).map(
    ([key, input]) => [key, checked(key, values[key] ?? input.default, input)] as const,
  );
  // `checked` gives each input the type that WorkedInput says.
  return Object.fromEntries(worked) as Worked<Inputs>;
}

/** RangeError for an input that must be there. */
export function notGiven(key: string): never {
  throw new RangeError(`${key} is missing.`);
}

function checked(key: string, value: InputValues[string], input: FigureInput): InputValues[string] {
  if (input.list === true) return checkedList(key, value, input);
  if (input.quantity === 'choice' || input.quantity === 'text') {
    return checkedWord(key, value, input);
  }
  if (value === undefined) return input.optional === true ? undefined : notGiven(key);
  return checkedNumber(key, value, input);
}

function checkedNumber(key: string, value: unknown, { range }: FigureInput): number {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    throw new RangeError(`${key} ${String(value)} is not a number.`);
  }
  return range === undefined ? value : inSpan(value, range);
}

function checkedWord(key: string, value: unknown, { values }: FigureInput): string {
  if (typeof value !== 'string') return notGiven(key);
  if (values !== undefined && !values.includes(value)) {
    throw new RangeError(`${key} "${value}" is not one of ${values.join(', ')}.`);
  }
  return value;
}

function checkedList(key: string, value: unknown, input: FigureInput): readonly number[] {
  if (value === undefined && input.optional === true) return [];
  if (!Array.isArray(value) || value.length === 0) throw new RangeError(`${key} has no readings.`);
  return value.map((each: unknown) => checkedNumber(key, each, input));
}
