import { at } from '../../at.ts';
import { good } from '../../problem.ts';
import type { Quantity } from '../../trade/units/quantities.ts';
import { quantitiesOf } from '../../trade/units/units.ts';
import type { DraftResult, DraftResults } from './draft.ts';
import { idFor } from './names.ts';
import { ask, notUnderstood, type Asking } from './question.ts';
import { pick, readResults } from './read-results.ts';

/** Asks what a check may show, until the results stand healthiest first. */
export function* askResults(words: string): Asking<DraftResults> {
  const typed = yield* ask({
    text: 'What may it show, the healthy one first?',
    may: 'Two to nine results with commas between them. For a reading: a word for each band and, between two bands, the limit with its unit (volts, ohms and amps are known by the question).',
    example: 'whole, burnt through      or:  full 11.5 V low 2 V dead',
    read: (line) => readResults(line, unitIn(words)),
  });
  const results = named(typed.labels);
  const { bands } = typed;
  if (bands === undefined) return { results: yield* orderResults(results) };
  const reading = { ...bands, quantity: yield* askQuantity(bands.unit) };
  return yield* results.length === 2
    ? askTwoBands(results, reading, lessIsGood.test(words))
    : askMoreBands(results, reading);
}

type Reading = NonNullable<DraftResults['reading']>;

/** The unit that the words of a question name: common practice, no source. */
const unitIn = (words: string): string | undefined =>
  [
    [/\b(volts?|voltage|drop)\b/i, 'V'] as const,
    [/\b(ohms?|resistance)\b/i, 'ohm'] as const,
    [/\b(amps?|current)\b/i, 'A'] as const,
  ].find(([pattern]) => pattern.test(words))?.[1];

/** What is better the less there is of it: common practice, no source. */
const lessIsGood = /\b(drop|loss|resistance|ohms?|current|amps?|leak(s|age)?|play|gap)\b/i;

/** Of two bands the first is the healthy one; which side of the limit it lies on is asked. */
function* askTwoBands(
  results: readonly DraftResult[],
  reading: Reading,
  less: boolean,
): Asking<DraftResults> {
  const limit = `${at(reading.limits, 0)} ${reading.unit}`;
  const above = yield* askAbove(at(results, 0).label, limit, less);
  const bands = results.map(({ id }) => id);
  return { results, reading: above ? reading : { ...reading, bands } };
}

/** Of more, the healthy one may lie in the middle: then the others are ordered by pairs. */
function* askMoreBands(results: readonly DraftResult[], reading: Reading): Asking<DraftResults> {
  const { limits } = reading;
  const healthy = yield* askHealthy(results);
  if (healthy === 0) return { results, reading };
  if (healthy === results.length - 1)
    return { results: results.toReversed(), reading: { ...reading, limits: limits.toReversed() } };
  const rising = at(limits, 0) < at(limits, 1);
  const bands = (rising ? results : results.toReversed()).map(({ id }) => id);
  const rest = results.filter((_, index) => index !== healthy);
  const ordered = yield* orderResults([at(results, healthy), ...rest]);
  const up = rising ? limits : limits.toReversed();
  return { results: ordered, reading: { ...reading, limits: up, bands } };
}

const named = (labels: readonly string[]): readonly DraftResult[] =>
  labels.reduce<readonly DraftResult[]>(
    (all, label) => [
      ...all,
      {
        label,
        id: idFor(
          label,
          all.map(({ id }) => id),
        ),
      },
    ],
    [],
  );

function* askQuantity(unit: string): Asking<Quantity> {
  const meant = quantitiesOf(unit);
  const first = at(meant, 0);
  if (meant.length === 1) return first;
  return yield* ask({
    text: `What does "${unit}" measure here?`,
    may: meant.join(' or '),
    example: first,
    offered: first,
    read: (line) => {
      const found = meant.find((one) => one === line.toLowerCase());
      return found === undefined
        ? notUnderstood(`"${unit}" can be: ${meant.join(', ')}.`)
        : good(found);
    },
  });
}

/** Which of the bands is the healthy one. */
function* askHealthy(results: readonly DraftResult[]): Asking<number> {
  return yield* ask({
    text: 'Which of these is the healthy one?',
    may: results.map(({ label }) => label).join(', '),
    example: at(results, 0).label,
    offered: at(results, 0).label,
    read: (line) => {
      const found = pick(line, results);
      return found === undefined
        ? notUnderstood(`"${line}" is none of them.`)
        : good(results.indexOf(found));
    },
  });
}

function* askAbove(label: string, limit: string, less: boolean): Asking<boolean> {
  return yield* ask({
    text: `Is "${label}" above ${limit}, or below it?`,
    may: 'above or below',
    example: 'below',
    offered: less ? 'below' : 'above',
    read: (line) =>
      /^(above|below|over|under)$/i.test(line)
        ? good(/^(above|over)$/i.test(line))
        : notUnderstood(`"${line}" is neither.`, 'Type above or below.'),
  });
}

/**
 * Brings the bad results of more than two into the order in which one hides the other, by asking
 * for each pair what is seen with both faults there.
 */
function* orderResults(results: readonly DraftResult[]): Asking<readonly DraftResult[]> {
  const [healthy, ...rest] = results;
  if (healthy === undefined || rest.length < 2) return results;
  const sorted: DraftResult[] = [];
  for (const one of rest) {
    let place = sorted.length;
    while (place > 0 && (yield* hides(at(sorted, place - 1), one))) place -= 1;
    sorted.splice(place, 0, one);
  }
  return [healthy, ...sorted];
}

/** Whether the first is what shows where both faults are there. */
function* hides(one: DraftResult, other: DraftResult): Asking<boolean> {
  const pair = [one, other];
  const seen = yield* ask({
    text: `One fault alone gives "${one.label}", another "${other.label}". With both, what do you see?`,
    may: `${one.label} or ${other.label}, or the first letters of it`,
    example: other.label,
    offered: other.label,
    read: (line) => {
      const found = pick(line, pair);
      return found === undefined
        ? notUnderstood(`"${line}" is neither "${one.label}" nor "${other.label}".`)
        : good(found);
    },
  });
  return seen === one;
}
