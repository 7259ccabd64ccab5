import { bad, good } from '../../problem.ts';
import type { Parsed } from '../../problem.ts';
import { isEveryday, parseReading } from './reading.ts';
import type { ReadingValue, ReadingWanted } from './reading.ts';
import { convert, findUnit } from './units.ts';

/**
 * Reads several readings of one quantity from one line, in their order and each in its own unit:
 * `12.55 12.30`, `150,145,120 psi`, `150/145/120`, `10,2; 10,4 bar`, `10bar,9,9.5`. Parted by
 * semicolons, slashes, blanks or commas. A reading without a unit takes that of the one before it,
 * else the next one's, else the wanted one. Commas are decimal commas where something else parts
 * the readings. Where nothing else does, the way is taken in which every reading is plausible or
 * an everyday size; `12,5` is a problem where both are. The first reading that cannot be read is
 * the one problem. Fractions of an inch (`3/8`) are read where the readings are parted otherwise
 * than by blanks.
 */
export function parseReadings(
  text: string,
  wanted: ReadingWanted,
): Parsed<readonly ReadingValue[]> {
  const ways = waysToPart(text, wanted).map((pieces) => readEach(pieces, wanted));
  const [first, second] = ways;
  if (first === undefined) return readEach([text], wanted);
  if (second === undefined) return first;
  const read = ways.flatMap((way) => (way.kind === 'good' ? [way] : []));
  const sensible = read.filter(({ value }) => value.every((each) => isSensible(each, wanted)));
  const left = sensible.length === 0 ? read : sensible;
  const [only] = left;
  if (only === undefined || left.length === 1) return only ?? first;
  return /,\d{1,2}(?!\d)/.test(text) ? askWhich(text) : first;
}

/** Pieces of the line, one a reading; two ways where one comma may be a decimal comma or part two. */
function waysToPart(text: string, { quantity }: ReadingWanted): readonly (readonly string[])[] {
  const marked = markFractions(text.trim(), quantity);
  if (/^[\s;,/]*$/.test(marked)) return [];
  const slash = slashMeansUnit.has(quantity) ? '' : `\\s*/\\s*${beforeNumber}|`;
  const mark = new RegExp(`\\s*;\\s*|,\\s+|${slash}\\s+${beforeNumber}`);
  const decimal = parted(marked, mark);
  if (!marked.includes(',') || decimal.length > 1) return [decimal];
  const byComma = parted(marked, /,/);
  return byComma.length === 2 && !/\.\d/.test(marked) ? [byComma, decimal] : [byComma];
}

const beforeNumber = '(?=[+-]?[.\\d])';

/** Quantities written with a slash before a number: ohm/1000 ft, l/100km, gauge 2/0. */
const slashMeansUnit: ReadonlySet<string> = new Set(['line-resistance', 'economy', 'wire-gauge']);

/** Gives parts of an inch, `3/8`, the slash of a fraction, so that it does not part readings. */
function markFractions(text: string, quantity: string): string {
  if (quantity !== 'length') return text;
  return text.replaceAll(/(?<![\d/.,])(\d+)\/(2|4|8|16|32|64)(?![\d/.,])/g, '$1\u2044$2');
}

const parted = (text: string, mark: RegExp): readonly string[] =>
  text.split(mark).filter((piece) => piece.trim() !== '');

/** Reads each piece; one without a unit takes that of its neighbor. */
function readEach(
  pieces: readonly string[],
  wanted: ReadingWanted,
): Parsed<readonly ReadingValue[]> {
  const units = pieces.map((piece) => unitOf(piece, wanted));
  const read: ReadingValue[] = [];
  let carried = units.find((unit) => unit !== undefined) ?? wanted.unit;
  for (const [place, piece] of pieces.entries()) {
    carried = units[place] ?? carried;
    const parsed = parseReading(piece, inUnit(wanted, carried));
    if (parsed.kind === 'bad') return parsed;
    read.push(parsed.value);
  }
  return good(read);
}

function unitOf(piece: string, { quantity }: ReadingWanted): string | undefined {
  const [, unit = ''] = /[\d.\u2044]\s*([^\d\s.,;+\u2044-].*)$/.exec(piece) ?? [];
  return unit === '' ? undefined : findUnit(quantity, unit)?.id;
}

/** The same wish told in another unit of its quantity. */
function inUnit(wanted: ReadingWanted, unit: string): ReadingWanted {
  const { quantity, plausible } = wanted;
  if (plausible === undefined || unit === wanted.unit) return { ...wanted, unit };
  const ends = plausible.map((end) => convert(end, wanted.unit, unit));
  return { quantity, unit, plausible: [Math.min(...ends), Math.max(...ends)] };
}

function isSensible({ value, unit }: ReadingValue, wanted: ReadingWanted): boolean {
  const { plausible = [-Infinity, Infinity] } = inUnit(wanted, unit);
  const [low, high] = plausible;
  return value >= low && value <= high && isEveryday(value, unit, wanted);
}

function askWhich(text: string): Parsed<never> {
  const shown = text.trim();
  return bad({
    code: 'reading-ambiguous',
    message: `"${shown.slice(0, 40)}" can mean one reading or two.`,
    mend: `Write ${shown.replace(',', '.')} for one, or ${shown.replace(',', ' ')} for two.`,
    value: shown.slice(0, 40),
  });
}
