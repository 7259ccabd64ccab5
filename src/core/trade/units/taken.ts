import { good, type Parsed } from '../../problem.ts';
import { parseReading, type ReadingValue, type ReadingWanted } from './reading.ts';
import { parseReadings } from './readings.ts';

/** What a meter shows where the thing measured lies beyond its range, as it was typed. */
type Beyond = { readonly beyond: string };

/** What was read off a meter: a number with its unit, or that its range was exceeded. */
export type Taken = ReadingValue | Beyond;

/** What meters show beyond their range, and what people type for it. */
const word = String.raw`\b(?:o\.l\.|ol\b|open\b|over\b)`;
const alone = new RegExp(`^${word}$`, 'i');

/**
 * Reads one reading as typed, in its own unit: `12.4 V`, or `OL`, `open`, `over` for a meter whose
 * range is exceeded. One problem for anything else.
 */
export function parseOne(text: string, wanted: ReadingWanted): Parsed<Taken> {
  const typed = text.trim();
  return alone.test(typed) ? good({ beyond: typed }) : parseReading(text, wanted);
}

/**
 * Reads several readings of one quantity from one line, as `parseReadings` does; `OL`, `open` or
 * `over` may stand for any of them. A reading takes the unit of the one before it.
 */
export function parseSeveral(text: string, wanted: ReadingWanted): Parsed<readonly Taken[]> {
  const taken: Taken[] = [];
  let unit = wanted.unit;
  for (const piece of text.split(new RegExp(`(${word})`, 'i'))) {
    if (/^[\s;,/]*$/.test(piece)) continue;
    if (alone.test(piece)) {
      taken.push({ beyond: piece });
      continue;
    }
    const read = parseReadings(piece, unit === wanted.unit ? wanted : { ...bare(wanted), unit });
    if (read.kind === 'bad') return read;
    taken.push(...read.value);
    unit = read.value.at(-1)?.unit ?? unit;
  }
  return taken.length > 0 ? good(taken) : parseReadings(text, wanted);
}

/** Without the sizes that make sense, which are told in another unit. */
const bare = ({ quantity, unit }: ReadingWanted): ReadingWanted => ({ quantity, unit });

/** The number that a meter's reading counts as, in its own unit: beyond all sizes if it shows none. */
export const sizeOf = (taken: Taken): number => ('beyond' in taken ? Infinity : taken.value);
