import { convert, findUnit, showReading } from '../trade/units/units.ts';
import { bandOf } from '../tree/judge.ts';
import type { Check } from '../tree/model.ts';
import { ownResults } from '../tree/own/bare.ts';
import { severalOf } from '../tree/several.ts';
import type { PayloadOf } from './event.ts';

/** What a finding, or an event that tells of one, says of its check. */
export type Shown = Pick<
  PayloadOf<'found'>,
  'result' | 'orResult' | 'reading' | 'beyond' | 'readings' | 'standard' | 'words'
>;

/**
 * Place of the result that a finding stands in: of two it may be, the one in whose band its
 * reading lies, and the healthier where there is no reading. The tree's own way goes on from here;
 * the belief counts both. -1 for a result that the check does not have.
 */
export function standsAt(check: Check, shown: Shown): number {
  const [lo, hi] = [shown.result, shown.orResult ?? shown.result].map((id) =>
    check.results.findIndex((result) => result.id === id),
  );
  if (lo === undefined || hi === undefined || lo < 0 || hi <= lo) return lo ?? -1;
  const judged = shown.standard ?? shown.reading;
  if (judged === undefined || check.reading === undefined) return lo;
  const { quantity, unit } = check.reading;
  if (findUnit(quantity, judged.unit) === undefined) return lo;
  return Math.max(lo, Math.min(hi, bandOf(check, convert(judged.value, judged.unit, unit))));
}

/** Everything that a finding may be of one list of results: both ends, and the one it stands in. */
export const idsOf = (check: Check, shown: Shown): readonly string[] => [
  ...new Set([
    check.results[standsAt(check, shown)]?.id ?? shown.result,
    shown.result,
    shown.orResult ?? shown.result,
  ]),
];

/**
 * What a finding showed: `half charged`, `half, or just full`, `half or full` without a reading. What
 * exactly was found stands first, where somebody said it, and how it was judged behind it.
 */
export function resultWords(check: Check | undefined, shown: Shown): string {
  const labels = labelWords(check, shown);
  const { words, result } = shown;
  if (words === undefined) return labels;
  return result === ownResults.neither ? words : `${words} (${labels})`;
}

function labelWords(check: Check | undefined, shown: Shown): string {
  const ids = check === undefined ? [shown.result] : idsOf(check, shown);
  const labels = ids.map(
    (id) => check?.results.find((result) => result.id === id)?.label ?? 'a result not in this tree',
  );
  return labels.length > 1 && shown.reading !== undefined ? orJust(labels) : labels.join(' or ');
}

/** The same in the first words of each label: `too much drop` of `too much drop: 0.2 V or more`. */
export const shortWords = (check: Check, shown: Shown): string =>
  shown.orResult === undefined ? shortLabel(resultWords(check, shown)) : resultWords(check, shown);

/** The result that a reading stands in, and those that only its meter's error leaves open. */
function orJust(labels: readonly string[]): string {
  const names = labels.map(shortLabel);
  return (new Set(names).size === names.length ? names : labels).join(', or just ');
}

/** The first words of a label, up to what explains them: `full` of `full: 12.4 V or more`. */
const shortLabel = (label: string): string => /^[^:;,(]*/.exec(label)?.[0].trim() || label;

/** `12.55 and 12.3 V, 0.25 V between them`; `OL`; empty where no reading was taken. */
export function readWords(check: Check | undefined, shown: Shown): string {
  const { reading, beyond, readings } = shown;
  if (beyond !== undefined) return beyond.trim();
  const judged = reading === undefined ? '' : showReading(reading.value, reading.unit);
  if (readings === undefined) return judged;
  const each = listed(readings);
  return judged === '' ? each : `${each}, ${judgedWords(check, judged)}`;
}

function listed(readings: NonNullable<Shown['readings']>): string {
  const units = new Set(readings.flatMap((one) => ('unit' in one ? [one.unit] : [])));
  const [unit = ''] = units;
  const words = readings.map((one) =>
    'beyond' in one
      ? one.beyond
      : units.size > 1
        ? showReading(one.value, one.unit)
        : showReading(one.value, one.unit).split(' ', 1)[0],
  );
  const list =
    words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
  return units.size === 1 && unit !== '1' ? `${list} ${unit}` : list;
}

/** What several readings come to, by the way in which their check judges them. */
export function judgedWords(check: Check | undefined, judged: string): string {
  switch (check && severalOf(check)?.judge) {
    case 'difference':
      return `${judged} between them`;
    case 'spread':
      return `${judged} from lowest to highest`;
    case 'lowest':
      return `the lowest ${judged}`;
    case 'each':
      return `the worst ${judged}`;
    case 'share':
      return `the lowest ${judged} of the highest`;
    default:
      return `${judged} as judged`;
  }
}
