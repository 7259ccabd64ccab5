import type { Problem } from '../problem.ts';
import { parseReading } from '../trade/reading.ts';
import { convert } from '../trade/units.ts';
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
  | { readonly kind: 'shown'; readonly shown: Shown; readonly index: number }
  | { readonly kind: 'refused'; readonly problem: Problem };

/** Turns an answer into what the check showed, or says in one line why it cannot. */
export function readAnswer(id: string, check: Check, answer: Answer): Answered {
  if (answer.reading !== undefined) return readReading(id, check, answer, answer.reading);
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

function readReading(id: string, check: Check, answer: Answer, typed: string | number): Answered {
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
  return judgeAmount(id, check, { reading: check.reading, amount, insist: answer.insist === true });
}

type Taken = { readonly reading: Reading; readonly amount: Amount; readonly insist: boolean };

function judgeAmount(id: string, check: Check, { reading, amount, insist }: Taken): Answered {
  const value = convert(amount.value, amount.unit, reading.unit);
  const judged = judge(check, reading, value, insist);
  if (judged.kind === 'implausible')
    return refused(
      'implausible',
      `${amount.typed ?? amount.value} lies outside ${judged.low} to ${judged.high} ${reading.unit}, which such a reading can hardly be.`,
      'Look at the meter and its range again; if it is really so, insist.',
      amount.typed,
    );
  const [low, high] = reading.plausible;
  const result = check.results[judged.index];
  if (result === undefined) throw new Error('judge points at a result that is not there');
  return {
    kind: 'shown',
    index: judged.index,
    shown: {
      check: id,
      result: result.id,
      reading: amount,
      ...((value < low || value > high) && { insisted: true }),
    },
  };
}

const refused = (code: string, message: string, mend: string, value?: string): Answered => ({
  kind: 'refused',
  problem: { code, message, mend, ...(value !== undefined && { value }) },
});
