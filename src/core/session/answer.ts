import type { Problem } from '../problem.ts';
import { withoutDust } from '../trade/dust.ts';
import { standardReading, type Conditions } from '../trade/standard.ts';
import { minusAsked, parseReading } from '../trade/units/reading.ts';
import { convert, showReading } from '../trade/units/units.ts';
import { judge } from '../tree/judge.ts';
import type { Check, Reading } from '../tree/model.ts';
import type { Amount, PayloadOf } from './event.ts';

/** How a person answers a check: a result picked, or a reading typed. */
export type Answer = {
  readonly result?: string | undefined;
  readonly orResult?: string | undefined;
  readonly reading?: string | number | undefined;
  readonly insist?: boolean | undefined;
};

type Shown = Omit<PayloadOf<'found'>, 'kind' | 'told'>;
export type Answered =
  | {
      readonly kind: 'shown';
      readonly shown: Shown;
      readonly index: number;
      /** The condition that the reading could not be judged by, since it is not known. */
      readonly needs?: keyof Conditions;
    }
  | { readonly kind: 'refused'; readonly problem: Problem };

/** The check that is answered, and the conditions that its reading is judged by. */
export type AskedCheck = { readonly id: string; readonly check: Check; readonly today: Conditions };

/** Turns an answer into what the check showed, or says in one line why it cannot. */
export function readAnswer(asked: AskedCheck, answer: Answer): Answered {
  const { id, check } = asked;
  if (answer.reading !== undefined) return readReading(asked, answer, answer.reading);
  if (answer.result === undefined)
    return refused('no-answer', 'The answer has no result.', 'Give "result" or "reading".');
  return readResult(id, check, answer.result, answer.orResult);
}

function readResult(id: string, check: Check, result: string, orResult?: string): Answered {
  const names = check.results.map((one) => one.id);
  const index = names.indexOf(result);
  const other = orResult === undefined ? index : names.indexOf(orResult);
  const wrong = index < 0 ? result : other < 0 ? orResult : undefined;
  if (wrong !== undefined)
    return refused(
      'unknown-result',
      `The check "${id}" has no result "${wrong}".`,
      `Its results: ${names.join(', ')}.`,
      wrong,
    );
  const [low, high] = index <= other ? [result, orResult] : [orResult as string, result];
  return {
    kind: 'shown',
    index: Math.min(index, other),
    shown: { check: id, result: low, ...(other !== index && { orResult: high }) },
  };
}

function readReading(asked: AskedCheck, answer: Answer, typed: string | number): Answered {
  const { id, check } = asked;
  if (check.reading === undefined)
    return refused(
      'no-reading-here',
      `The check "${id}" takes no reading.`,
      `Give one of its results: ${check.results.map((one) => one.id).join(', ')}.`,
      String(typed),
    );
  const text = String(typed);
  const parsed = parseReading(text, check.reading);
  const problem = parsed.kind === 'bad' ? parsed.problems[0] : undefined;
  if (parsed.kind === 'bad')
    return problem === undefined
      ? refused('no-number', `"${text}" is no reading.`, 'Type a number.', text)
      : { kind: 'refused', problem };
  const amount: Amount = { ...parsed.value, typed: text };
  return judgeAmount(asked, {
    reading: check.reading,
    amount,
    insist: answer.insist === true,
  });
}

type Taken = { readonly reading: Reading; readonly amount: Amount; readonly insist: boolean };

function judgeAmount({ id, check, today }: AskedCheck, taken: Taken): Answered {
  const { reading, amount, insist } = taken;
  const value = convert(amount.value, amount.unit, reading.unit);
  const standard = standardReading(reading.standard ?? '', { value, unit: reading.unit }, today);
  const { value: judged } = standard.kind === 'standard' ? standard : { value };
  const doubt = doubtOf(taken, { value, judged });
  if (doubt !== undefined && !insist) return { kind: 'refused', problem: doubt };
  const index = judge(check, judged);
  const result = check.results[index];
  if (result === undefined) throw new Error('judge points at a result that is not there');
  return {
    kind: 'shown',
    index,
    shown: {
      check: id,
      result: result.id,
      reading: amount,
      ...(standard.kind === 'standard' && {
        standard: { value: standard.value, unit: standard.unit, under: standard.under },
      }),
      ...(doubt !== undefined && { insisted: true }),
    },
    ...(standard.kind === 'needs' && { needs: standard.condition }),
  };
}

/** A reading in the check's own unit, as read and at reference conditions. */
type Measured = { readonly value: number; readonly judged: number };

/** What there is to ask before such a reading is taken. */
function doubtOf({ reading, amount }: Taken, { value, judged }: Measured): Problem | undefined {
  const typed = amount.typed ?? showReading(amount.value, amount.unit);
  const minus = minusAsked(amount, reading, typed);
  if (minus !== undefined) return minus;
  const [low, high] = reading.plausible;
  const odd = [value, judged].map(withoutDust).find((each) => each < low || each > high);
  if (odd === undefined) return undefined;
  const told =
    odd === withoutDust(value) ? typed : `${typed}, corrected ${showReading(odd, reading.unit)},`;
  return {
    code: 'implausible',
    message: `${told} lies outside ${low} to ${high} ${reading.unit}, which such a reading can hardly be.`,
    mend: 'Look at the meter and its range again; if it is really so, insist.',
    ...(amount.typed !== undefined && { value: amount.typed }),
  };
}

const refused = (code: string, message: string, mend: string, value?: string): Answered => ({
  kind: 'refused',
  problem: { code, message, mend, ...(value !== undefined && { value }) },
});
