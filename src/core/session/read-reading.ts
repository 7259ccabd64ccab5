import { at } from '../at.ts';
import type { Parsed, Problem } from '../problem.ts';
import { withoutDust } from '../trade/dust.ts';
import { standardReading, type Conditions } from '../trade/standard.ts';
import { minusAsked, type ReadingWanted } from '../trade/units/reading.ts';
import { parseOne, parseSeveral, sizeOf, type Taken } from '../trade/units/taken.ts';
import { convert, showReading } from '../trade/units/units.ts';
import { judge, measured, type Judged, type Measured } from '../tree/judge.ts';
import { edgesOf } from '../tree/limits.ts';
import type { Check, Reading } from '../tree/model.ts';
import { combined, readingsWanted, severalOf, type Several } from '../tree/several.ts';
import { refused, type Answered, type AskedCheck } from './answered.ts';

/** What was typed into a check's field of readings, and how it is to be judged. */
type Typed = {
  readonly text: string;
  readonly taken: readonly Taken[];
  readonly reading: Reading;
  /** Undefined where the check takes a single reading. */
  readonly several: Several | undefined;
};

/** Turns what was typed into what the check showed; an unlikely reading wants a second word. */
export function readReading(asked: AskedCheck, text: string, insist: boolean): Answered {
  const { id, check } = asked;
  if (check.reading === undefined)
    return refused(
      'no-reading-here',
      `The check "${id}" takes no reading.`,
      `Give one of its results: ${check.results.map((one) => one.id).join(', ')}.`,
      text,
    );
  const several = severalOf(check);
  const parsed: Parsed<readonly Taken[]> =
    several === undefined ? one(text, check.reading) : parseSeveral(text, several.readings[0]);
  if (parsed.kind === 'bad') return { kind: 'refused', problem: at(parsed.problems, 0) };
  const typed = { text, taken: parsed.value, reading: check.reading, several };
  const wrong = several && wrongCount(asked, several, typed.taken.length);
  if (wrong !== undefined) return { kind: 'refused', problem: { ...wrong, value: text } };
  return judged(asked, typed, insist);
}

function one(text: string, wanted: ReadingWanted): Parsed<readonly Taken[]> {
  const parsed = parseOne(text, wanted);
  return parsed.kind === 'bad' ? parsed : { kind: 'good', value: [parsed.value] };
}

/** That there are more or fewer readings than the check takes. */
function wrongCount(
  { check, facts }: AskedCheck,
  { readings }: Several,
  typed: number,
): Problem | undefined {
  const wanted = readingsWanted(check, facts);
  if (wanted === undefined ? typed > 1 : typed === wanted) return undefined;
  const are = `${typed} ${typed === 1 ? 'reading' : 'readings'} typed`;
  const each = wanted === undefined ? 'one a cylinder' : `${wanted}, one a cylinder`;
  const which =
    check.each === undefined ? `${wanted}: ${readings.map(({ name }) => name).join(', ')}` : each;
  return {
    code: 'reading-count',
    message: `${are}, wanted ${which}.`,
    mend: 'Type them on one line, in their order, with blanks between.',
  };
}

/** One value that is judged: as it was read, at reference conditions, and the results it may be. */
type Verdict = {
  readonly value: number;
  readonly standard: ReturnType<typeof standardReading>;
  readonly bands: Judged;
  /** How far it lies outside the healthy band; inside, less than nothing. */
  readonly off: number;
};

function judged(asked: AskedCheck, typed: Typed, insist: boolean): Answered {
  const { check, today } = asked;
  let values: readonly Measured[];
  try {
    values = valuesOf(typed);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return refused(
      'readings-not-compared',
      `These readings cannot be compared: ${error.message}`,
      'Type them again, or pick the result with the arrows.',
      typed.text,
    );
  }
  const verdicts = values.map((value): Verdict => {
    const { standard, brought } = atStandard(typed.reading, value, today);
    const bands = judge(check, brought);
    return { value: value.value, standard, bands, off: fromHealthy(check, brought.value) };
  });
  const doubt = doubtOf(typed, verdicts);
  if (doubt !== undefined && !insist) return { kind: 'refused', problem: doubt };
  return shown(asked, typed, { verdicts, insisted: doubt !== undefined });
}

function valuesOf({ taken, reading, several }: Typed): readonly Measured[] {
  const unit = several?.readings[0].unit ?? reading.unit;
  const values = taken.map((each) =>
    'beyond' in each ? sizeOf(each) : convert(each.value, each.unit, unit),
  );
  return several === undefined
    ? values.map((value) => measured(reading, value))
    : combined(several, values);
}

/** A value brought to reference conditions, its ends with it. */
function atStandard(reading: Reading, { value, low, high }: Measured, today: Conditions) {
  const asIs = { standard: { kind: 'as-is' } as const, brought: { value, low, high } };
  if (!Number.isFinite(value)) return asIs;
  const turn = (size: number) =>
    standardReading(reading.standard ?? '', { value: size, unit: reading.unit }, today);
  const standard = turn(value);
  if (standard.kind !== 'standard') return { ...asIs, standard };
  const end = (size: number): number => {
    const turned = turn(size);
    return turned.kind === 'standard' ? turned.value : size;
  };
  return { standard, brought: { value: standard.value, low: end(low), high: end(high) } };
}

function fromHealthy({ results }: Check, value: number): number {
  const { from, below } = edgesOf(at(results, 0));
  return Math.max(from - value, value - below);
}

/** What there is to ask before such readings are taken. */
function doubtOf(typed: Typed, verdicts: readonly Verdict[]): Problem | undefined {
  const { taken, reading, several } = typed;
  const wanted = several?.readings[0] ?? reading;
  for (const each of taken) {
    if ('beyond' in each) continue;
    const words = several === undefined ? typed.text : showReading(each.value, each.unit);
    const minus = minusAsked(each, wanted, words);
    if (minus !== undefined) return { ...minus, value: typed.text.slice(0, 40) };
    const odd = outside(convert(each.value, each.unit, wanted.unit), wanted);
    if (odd !== undefined) return implausible(words, typed, wanted);
  }
  return doubtOfJudged(typed, verdicts);
}

/** The same of what is judged: the several as one, or a reading once it is corrected. */
function doubtOfJudged(typed: Typed, verdicts: readonly Verdict[]): Problem | undefined {
  const { reading, several, text } = typed;
  for (const { value, standard } of verdicts) {
    if (several !== undefined && outside(value, reading) !== undefined)
      return implausible(`${text}, judged as ${showReading(value, reading.unit)},`, typed, reading);
    if (standard.kind !== 'standard' || outside(standard.value, reading) === undefined) continue;
    const corrected = showReading(withoutDust(standard.value), reading.unit);
    return implausible(`${text}, corrected ${corrected},`, typed, reading);
  }
  return undefined;
}

function outside(value: number, { plausible }: Pick<Reading, 'plausible'>): number | undefined {
  const [low, high] = plausible;
  const clean = withoutDust(value);
  return Number.isFinite(clean) && (clean < low || clean > high) ? clean : undefined;
}

const implausible = (
  words: string,
  { text }: Typed,
  { plausible: [low, high], unit }: Pick<Reading, 'plausible' | 'unit'>,
): Problem => ({
  code: 'implausible',
  message: `${words} lies outside ${low} to ${high} ${unit}, which such a reading can hardly be.`,
  mend: 'Look at the meter and its range again; if it is really so, insist.',
  value: text,
});

type Weighed = { readonly verdicts: readonly Verdict[]; readonly insisted: boolean };

/** What the check showed: of several judged each by itself, the one furthest from healthy counts. */
function shown({ id, check }: AskedCheck, typed: Typed, { verdicts, insisted }: Weighed): Answered {
  const stands = Math.max(...verdicts.map(({ bands }) => bands.stands));
  const lo = Math.max(...verdicts.map(({ bands }) => bands.lo));
  const hi = Math.max(...verdicts.map(({ bands }) => bands.hi));
  const worst = verdicts.filter(({ bands }) => bands.stands === stands);
  const { standard, value } = at(
    worst.toSorted((one, other) => other.off - one.off),
    0,
  );
  return {
    kind: 'shown',
    index: stands,
    shown: {
      check: id,
      result: at(check.results, lo).id,
      ...(hi > lo && { orResult: at(check.results, hi).id }),
      ...amounts(typed, value),
      ...(standard.kind === 'standard' && {
        standard: { value: standard.value, unit: standard.unit, under: standard.under },
      }),
      ...(insisted && { insisted: true }),
    },
    ...(standard.kind === 'needs' && { needs: standard.condition }),
  };
}

/** The readings as the record keeps them: what is judged, and each as it was taken. */
function amounts({ text, taken, reading, several }: Typed, value: number) {
  const [first] = taken;
  if (several === undefined && first !== undefined)
    return 'beyond' in first ? { beyond: text } : { reading: { ...first, typed: text } };
  return {
    ...(Number.isFinite(value) && {
      reading: { value: withoutDust(value), unit: reading.unit, typed: text },
    }),
    readings: [...taken],
  };
}
