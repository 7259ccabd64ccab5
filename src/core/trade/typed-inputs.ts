import { bad, good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { FigureInput } from './figure-input.ts';
import { meant } from './units/nearest.ts';
import { readNumber } from './units/number.ts';
import { isQuantity } from './units/quantities.ts';
import type { Quantity } from './units/quantities.ts';
import { minusAsked, parseReading } from './units/reading.ts';
import type { ReadingWanted } from './units/reading.ts';
import { parseReadings } from './units/readings.ts';
import { convert } from './units/units.ts';
import { usualUnit, type Units } from './units/usual.ts';

/** One input as it was typed, and in the figure's own unit. */
export type TypedInput = {
  readonly shown: { readonly value: number | string | readonly number[]; readonly unit: string };
  readonly inUnit: number | string | readonly number[];
  /** A unit that belongs to another input. */
  readonly unitTyped?: string;
};

/** Reads one typed input of a figure; every problem names the input in `path`. */
export function typedInput(
  key: string,
  input: FigureInput,
  text: string,
  units: Units,
): Parsed<TypedInput> {
  const parsed = typedAny(input, text, units);
  if (parsed.kind === 'good') return parsed;
  return bad(...parsed.problems.map((problem) => ({ ...problem, path: key })));
}

function typedAny(input: FigureInput, text: string, units: Units): Parsed<TypedInput> {
  if (isMeasured(input))
    return input.list === true ? typedList(input, text, units) : typedReading(input, text, units);
  if (input.quantity === 'choice') return typedChoice(input.values ?? [], text.trim());
  return input.quantity === 'text' ? typedText(text.trim()) : typedNumber(text);
}

function typedChoice(values: readonly string[], word: string): Parsed<TypedInput> {
  // `6 V` and `105 °C` are the choices 6 and 105.
  const bare = word.toLowerCase().replace(/^(\d+)\s*(?:v|volts?|°?c)$/, '$1');
  const found = values.find((each) => each.toLowerCase() === bare);
  if (found !== undefined) return good({ shown: { value: found, unit: '' }, inUnit: found });
  const message = `"${word.slice(0, 40)}" is not one of the choices.`;
  return refuse('figure-choice-unknown', message, meant(word, values), word);
}

function typedText(word: string): Parsed<TypedInput> {
  if (word === '') return refuse('reading-empty', 'There is nothing typed.', 'Type a value.', word);
  return good({ shown: { value: word, unit: '' }, inUnit: word });
}

function typedNumber(text: string): Parsed<TypedInput> {
  const found = readNumber(text);
  if (found === undefined || !Number.isFinite(found.value)) {
    const message = `"${text.slice(0, 40)}" is not a number.`;
    return refuse('reading-not-a-number', message, 'Type a number such as 12.4.', text);
  }
  // A point is a decimal point here: without a quantity nothing tells thousands apart.
  if (found.grouped?.mark === ',') {
    const { value: thousands } = found.grouped;
    const message = `"${text.slice(0, 40)}" can mean ${found.value} or ${thousands}.`;
    return refuse('reading-ambiguous', message, `Write ${found.value} or ${thousands}.`, text);
  }
  const single = { shown: { value: found.value, unit: found.rest }, inUnit: found.value };
  return good(found.rest === '' ? single : { ...single, unitTyped: found.rest });
}

type Measured = FigureInput & { readonly quantity: Quantity };

const isMeasured = (input: FigureInput): input is Measured => isQuantity(input.quantity);

function wantedFor({ quantity, unit, range }: Measured, units: Units): ReadingWanted {
  const usual = usualUnit(unit, units);
  const bound = (value: number): number => convert(value, unit, usual);
  return {
    quantity,
    unit: usual,
    ...(range !== undefined && { plausible: [bound(range.low), bound(range.high)] }),
  };
}

function typedReading(input: Measured, text: string, units: Units): Parsed<TypedInput> {
  const wanted = wantedFor(input, units);
  const parsed = parseReading(text, wanted);
  if (parsed.kind === 'bad') return parsed;
  const minus = minusAsked(parsed.value, wanted, text);
  if (minus !== undefined) return bad({ ...minus, mend: 'If so, type it without the minus.' });
  try {
    const inUnit = convert(parsed.value.value, parsed.value.unit, input.unit);
    return good({ shown: parsed.value, inUnit });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refuse('figure-out-of-range', error.message, 'Check the value and its unit.', text);
  }
}

/** `150 145 120 psi`, `10,2; 10,4 bar`, `10bar,9,9.5`: a unit anywhere holds for the rest. */
function typedList(input: Measured, text: string, units: Units): Parsed<TypedInput> {
  const { unit } = input;
  const parsed = parseReadings(text, wantedFor(input, units));
  if (parsed.kind === 'bad') return parsed;
  const inUnit = parsed.value.map((each) => convert(each.value, each.unit, unit));
  return good({ shown: { value: inUnit, unit }, inUnit });
}

function refuse(code: string, message: string, mend: string, text: string): Parsed<never> {
  return bad({ code, message, mend, value: text.slice(0, 40) });
}
