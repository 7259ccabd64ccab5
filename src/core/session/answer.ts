import type { Check } from '../tree/model.ts';
import { refused, type Answered, type AskedCheck } from './answered.ts';
import { readReading } from './read-reading.ts';

/** How a person answers a check: a result picked, or readings typed. */
export type Answer = {
  readonly result?: string | undefined;
  readonly orResult?: string | undefined;
  readonly reading?: string | number | undefined;
  readonly insist?: boolean | undefined;
};

/** Turns an answer into what the check showed, or says in one line why it cannot. */
export function readAnswer(asked: AskedCheck, answer: Answer): Answered {
  const { id, check } = asked;
  if (answer.reading !== undefined)
    return readReading(asked, String(answer.reading), answer.insist === true);
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
