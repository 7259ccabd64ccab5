import { bad, good } from '../../problem.ts';
import type { Parsed, Problem } from '../../problem.ts';
import { readNumber } from './number.ts';
import type { Grouped } from './number.ts';
import { quantities } from './quantities.ts';
import type { Quantity } from './quantities.ts';
import { convert, findUnit, namesOf, unitNames } from './units.ts';

/** A number with its unit, as it was typed or worked out. */
export type ReadingValue = { readonly value: number; readonly unit: string };

/** What is asked for: the kind of quantity and the unit that counts when none is typed. */
export type ReadingWanted = {
  readonly quantity: Quantity;
  readonly unit: string;
  /** Sizes that make sense, in `unit`; helps to tell what `1,250` means. Nothing is refused by it. */
  readonly plausible?: readonly [number, number];
};

/**
 * Reads what a person typed: `15`, `15 inHg`, `51 kPa`, `12,4 V`, `1 1/8 in`, `68F`. The value stays
 * in the unit typed. A comma is a decimal comma unless exactly three digits follow it; then it is
 * read in the one way that is plausible here or an everyday size of that quantity. If both or
 * neither are, it parts thousands of a unit that nobody reads to a thousandth (`5,200 ft`) and is a
 * problem with any other. A point is a decimal point, but with three digits behind it and such a
 * unit it is settled the same way and else is a problem (`5.200 ft`). Anything else that is not one
 * number and one fitting unit is one problem.
 */
export function parseReading(text: string, wanted: ReadingWanted): Parsed<ReadingValue> {
  const shown = text.trim();
  if (shown === '') return refuse('reading-empty', 'There is no reading.', example(wanted), text);
  const found = readNumber(shown, wanted.quantity === 'wire-gauge');
  if (found === undefined) {
    const message = `"${clip(shown)}" is not a number.`;
    return refuse('reading-not-a-number', message, example(wanted), text);
  }
  if (!Number.isFinite(found.value)) {
    const message = `"${clip(shown)}" is too large or divides by nothing.`;
    return refuse('reading-too-large', message, example(wanted), text);
  }
  const unit = readUnit(found.rest, wanted);
  if (typeof unit !== 'string') return bad({ ...unit, value: clip(text) });
  if (found.grouped === undefined) return good({ value: found.value, unit });
  const isCoarse = findUnit(wanted.quantity, unit)?.coarse === true;
  if (found.grouped.mark === '.' && !isCoarse) return good({ value: found.value, unit });
  return settle({ decimal: found.value, grouped: found.grouped, unit, isCoarse }, wanted, shown);
}

function readUnit(rest: string, wanted: ReadingWanted): string | Problem {
  if (rest === '') return wanted.unit;
  const row = findUnit(wanted.quantity, rest);
  if (row !== undefined) return row.id;
  const mend = `Use ${listUnits(wanted.quantity)}; with no unit it is ${wanted.unit}.`;
  const others = namesOf(rest);
  const { name } = quantities[wanted.quantity];
  return others === ''
    ? { code: 'reading-unit-unknown', message: `The unit "${clip(rest)}" is not known.`, mend }
    : { code: 'reading-unit-wrong', message: `"${rest}" measures ${others}, not ${name}.`, mend };
}

type TwoWays = {
  readonly decimal: number;
  readonly grouped: Grouped;
  readonly unit: string;
  readonly isCoarse: boolean;
};

/**
 * Chooses between 1.25 and 1250 for `1,250`: the one that is plausible here; failing that, the one
 * that is an everyday size; failing that, a comma with a coarse unit parts thousands, and nobody
 * can tell of any other.
 */
function settle(ways: TwoWays, wanted: ReadingWanted, shown: string): Parsed<ReadingValue> {
  const { unit, decimal, isCoarse } = ways;
  const grouped = ways.grouped.value;
  for (const sensible of [isPlausible, isEveryday]) {
    const left = [decimal, grouped].filter((value) => sensible(value, unit, wanted));
    const [only] = left;
    if (left.length === 1 && only !== undefined) return good({ value: only, unit });
  }
  if (isCoarse && ways.grouped.mark === ',') return good({ value: grouped, unit });
  return refuse(
    'reading-ambiguous',
    `"${clip(shown)}" can mean ${decimal} or ${grouped}${unit === '1' ? '' : ` ${unit}`}.`,
    `Write ${decimal} or ${grouped}.`,
    shown,
  );
}

function isPlausible(value: number, unit: string, wanted: ReadingWanted): boolean {
  const [low, high] = wanted.plausible ?? [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  const size = safely(value, unit, wanted);
  return size >= low && size <= high;
}

/** True for a size that is met in everyday work with that quantity. */
export function isEveryday(value: number, unit: string, { quantity }: ReadingWanted): boolean {
  const [low, high] = quantities[quantity].everyday;
  const size = inBase(value, unit, quantity);
  return size >= low && size <= high;
}

/** In the wanted unit; a size that cannot be (below absolute zero) is in no band. */
function safely(value: number, unit: string, wanted: ReadingWanted): number {
  try {
    return convert(value, unit, wanted.unit);
  } catch (error) {
    if (error instanceof RangeError) return Number.NaN;
    throw error;
  }
}

function inBase(value: number, unit: string, quantity: Quantity): number {
  const { factor = Number.NaN, offset, upsideDown } = findUnit(quantity, unit) ?? {};
  const scaled = offset === undefined ? Math.abs(value) * factor : (value + offset) * factor;
  return upsideDown === true ? 1 / scaled : scaled;
}

/**
 * What to ask of a voltage with a minus where none below zero is meant: the probes may be swapped,
 * or the vehicle has its positive side on ground. Undefined where there is nothing to ask.
 */
export function minusAsked(
  { value }: ReadingValue,
  { quantity, plausible }: ReadingWanted,
  typed: string,
): Problem | undefined {
  if (quantity !== 'voltage' || value >= 0 || (plausible?.[0] ?? 0) < 0) return undefined;
  return {
    code: 'reading-minus',
    message: `${clip(typed.trim())} has a minus: are the probes swapped, or is it positive ground?`,
    mend: 'If so, type it without the minus; if it is truly below zero, insist.',
    value: clip(typed),
  };
}

function listUnits(quantity: Quantity): string {
  const names = unitNames(quantity).slice(0, 6);
  return names.length === 1
    ? names.join('')
    : `${names.slice(0, -1).join(', ')} or ${names.at(-1)}`;
}

function example(wanted: ReadingWanted): string {
  const { unit } = wanted;
  return unit === '1'
    ? 'Type a number such as 1.25.'
    : `Type a number with or without a unit, such as 12.4 or 12.4 ${unit}.`;
}

function refuse(code: string, message: string, mend: string, text: string): Parsed<never> {
  return bad({ code, message, mend, value: clip(text) });
}

function clip(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
