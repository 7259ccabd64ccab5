import { at } from '../../at.ts';
import { good, type Parsed } from '../../problem.ts';
import { readNumber } from '../../trade/units/number.ts';
import { quantitiesOf, unitId } from '../../trade/units/units.ts';
import { longest } from '../lint/texts.ts';
import type { DraftResult } from './draft.ts';
import { notUnderstood } from './question.ts';

/** Words, or words with the limits between them. */
export type TypedResults = {
  readonly labels: readonly string[];
  readonly bands?: { readonly limits: readonly number[]; readonly unit: string };
};

const mostResults = 9;

/**
 * Reads `whole, burnt through`, or bands with their limits: `full 11.5 V low 2 V dead`.
 * @param usual the unit that is meant where none is typed
 */
export function readResults(line: string, usual?: string): Parsed<TypedResults> {
  const ladder = ladderIn(line, usual);
  const labels =
    ladder?.labels ??
    line.split(line.includes(';') ? /\s*;\s*/ : /\s*,\s*/).filter((label) => label !== '');
  const wrong = wrongLabels(labels);
  if (wrong !== undefined) return notUnderstood(wrong);
  if (ladder === undefined) return good({ labels });
  const bands = readBands(ladder);
  return bands.kind === 'bad' ? bands : good({ labels, bands: bands.value });
}

function wrongLabels(labels: readonly string[]): string | undefined {
  if (labels.length < 2) return 'That is one result; a check shows one of two or more.';
  if (labels.length > mostResults)
    return `Those are ${labels.length} results; ${mostResults} is the most.`;
  const long = labels.find((label) => label.length > longest.label);
  if (long !== undefined)
    return `"${long}" has ${long.length} characters; there is room for ${longest.label}.`;
  const small = labels.map((label) => label.toLowerCase());
  const twice = small.find((label, index) => small.indexOf(label) !== index);
  return twice === undefined ? undefined : `"${twice}" stands there twice.`;
}

/** Words and numbers as they alternate on a line. */
type Ladder = {
  readonly labels: readonly string[];
  readonly limits: readonly number[];
  readonly units: readonly string[];
};

/** What one word of a line is: part of a label, a limit, a unit. */
type Part = { readonly word: string } | { readonly limit: number } | { readonly unit: string };

function partsOf(line: string): readonly Part[] {
  let justNumber = false;
  return line
    .replaceAll(/,(?=\s)/g, ' ')
    .split(/\s+/)
    .flatMap((word): Part[] => {
      const number = readNumber(word);
      const unit: string = number?.rest ?? (justNumber ? word : '');
      justNumber = number?.rest === '';
      const limit = number === undefined ? [] : [{ limit: number.value }];
      if (unit !== '' && quantitiesOf(unit).length > 0) return [...limit, { unit: unitId(unit) }];
      return number === undefined ? [{ word }] : limit;
    });
}

/** A line of words with numbers between them, one of them in a unit; undefined where it is none. */
function ladderIn(line: string, usual: string | undefined): Ladder | undefined {
  // With commas, a number among the words of one part belongs to them: "1 turn, 2 turns".
  const mixed = line.split(/,\s+/).some((part) => /^[\d.,]+\s*\S+\s+\S/.test(part));
  if (mixed && line.includes(', ')) return undefined;
  const parts = partsOf(line);
  const limits = parts.flatMap((part) => ('limit' in part ? [part.limit] : []));
  const typed = parts.flatMap((part) => ('unit' in part ? [part.unit] : []));
  const units = typed.length > 0 || usual === undefined ? typed : [usual];
  const labels = parts.reduce<readonly string[]>(
    (all, part) => {
      if ('limit' in part) return [...all, ''];
      return 'unit' in part
        ? all
        : [...all.slice(0, -1), `${all.at(-1) ?? ''} ${part.word}`.trim()];
    },
    [''],
  );
  const whole = limits.length > 0 && labels.every((label) => label !== '');
  return whole && (units.length > 0 || !line.includes(',')) ? { labels, limits, units } : undefined;
}

function readBands({ limits, units }: Ladder): Parsed<{ limits: readonly number[]; unit: string }> {
  const [unit, other] = new Set(units);
  if (unit === undefined)
    return notUnderstood(
      'In which unit are these limits?',
      'Write it behind one of them: full 11.5 V low 2 V dead.',
    );
  if (other !== undefined)
    return notUnderstood(
      `The limits are in ${unit} and in ${other}.`,
      'Give them all in one unit.',
    );
  const steps = limits.slice(1).map((limit, index) => Math.sign(limit - at(limits, index)));
  if (steps.some((step) => step === 0 || step !== steps[0]))
    return notUnderstood(
      'The limits go up and down.',
      'Give the bands as they lie on the meter, from one end to the other.',
    );
  return good({ limits, unit });
}

/** The result that a word means: whole, or the only one that begins so. */
export function pick(word: string, results: readonly DraftResult[]): DraftResult | undefined {
  const small = word.toLowerCase();
  const whole = results.find(({ id, label }) => label.toLowerCase() === small || id === small);
  const begun = results.filter(({ label }) => label.toLowerCase().startsWith(small));
  return whole ?? (begun.length === 1 ? begun[0] : undefined);
}
