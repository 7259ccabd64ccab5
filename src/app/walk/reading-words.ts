import { bookWords } from '../../core/session/book.ts';
import {
  judgedWords,
  resultWords,
  shortWords,
  type Shown,
} from '../../core/session/finding-words.ts';
import { currentLeg, type Story } from '../../core/session/story.ts';
import { showReading } from '../../core/trade/units/units.ts';
import type { Check, Reading } from '../../core/tree/model.ts';
import { booksOf } from '../../core/tree/limits.ts';
import { readingsWanted, severalOf } from '../../core/tree/several.ts';
import { standardWords } from '../wording.ts';

/** What stands around the field of a reading while it is typed. */
export type ReadingWords = {
  /** The unit of what is typed. */
  readonly unit: string;
  /** Behind it: `, as 17.9 at sea level`, `: half, or just full`. Empty where the marked line says all. */
  readonly behind: string;
  /** In a row below: how several are judged, or by whose figure. Undefined where there is no such row. */
  readonly below: string | undefined;
};

/** Whether a row stands below the field: several readings are judged as one, or by a book's figure. */
export const hasRowBelow = (check: Check): boolean =>
  severalOf(check) !== undefined || check.results.some((result) => booksOf(result).length > 0);

/** @param shown what would be kept of what was typed so far; undefined while that is no answer */
export function readingWords(
  story: Story,
  check: Check & { readonly reading: Reading },
  shown: Shown | undefined,
): ReadingWords {
  const several = severalOf(check);
  const book = bookWords(story, currentLeg(story), check);
  const unit = several?.readings[0].unit ?? check.reading.unit;
  const standard = shown === undefined ? '' : standardWords(shown.standard);
  const doubt = shown?.orResult === undefined ? '' : `: ${resultWords(check, shown)}`;
  const behind = standard === '' ? '' : `, ${standard}`;
  if (!hasRowBelow(check)) return { unit, behind: `${behind}${doubt}`, below: undefined };
  const rest =
    several === undefined
      ? doubt
      : `: ${shown === undefined ? wantedWords(story, check) : severalShown(check, shown)}`;
  const below = book === '' ? rest.slice(2) : `judged ${book}${rest}`;
  return { unit, behind, below };
}

/** How many readings are to be typed, and which. */
function wantedWords({ facts }: Story, check: Check): string {
  const wanted = readingsWanted(check, facts);
  if (check.each !== undefined)
    return wanted === undefined
      ? 'one a cylinder, on one line'
      : `one a cylinder, ${wanted} on one line`;
  return `${wanted} on one line: ${(check.readings ?? []).map(({ name }) => name).join(', ')}`;
}

/** `0.25 V between them: too much drop`. */
function severalShown(check: Check, shown: Shown): string {
  const { reading } = shown;
  const judged =
    reading === undefined
      ? ''
      : `${judgedWords(check, showReading(reading.value, reading.unit))}: `;
  return `= ${judged}${shortWords(check, shown)}`;
}
