import { nearlyCertain } from '../advice/look-ahead.ts';
import type { Parsed } from '../../problem.ts';
import { good } from '../../problem.ts';
import { refinedAdvice } from '../advice/advise.ts';
import type { Advice, NextStep } from '../advice/advice.ts';
import type { Round } from '../advice/search.ts';
import type { ReasoningInput } from '../belief/evidence.ts';
import { moveMinutes, moveNamed, type StepName } from '../advice/minutes.ts';

/** One step that was chosen, beside what the advice would have chosen from the same place. */
export type Regret = {
  readonly advice: Advice;
  readonly best: NextStep | undefined;
  /** Expected minutes to a proven repair, more than with the best step; never below 0. */
  readonly minutes: number;
  /** No result of the check could have moved anything. */
  readonly tellsNothing: boolean;
};

export type RegretOptions = {
  readonly leaveOut?: readonly StepName[];
  readonly further?: readonly Round[];
};

/**
 * Weighs a chosen step by what could be known when it was chosen; how it came out plays no part.
 * A check that could tell nothing costs its own minutes; so does one done while a proof waits.
 * No step costs more than its own minutes: what was best before it can still be done after it.
 */
export function regretOf(
  input: ReasoningInput,
  chosen: StepName,
  options: RegretOptions = {},
): Parsed<Regret> {
  const advised = refinedAdvice(input, { ...options, own: chosen });
  if (advised.kind === 'bad') return advised;
  const advice = advised.value;
  const [best] = advice.next;
  const mine = advice.next.find(({ do: kind, id }) => kind === chosen.do && id === chosen.id);
  const tellsNothing = chosen.do === 'check' && mine !== undefined && isCertain(mine);
  const most = ownMinutes(input, chosen);
  const minutes = tellsNothing ? most : (best?.versusTree ?? most);
  return good({ advice, best, minutes: Math.min(most, Math.max(0, minutes)), tellsNothing });
}

const isCertain = ({ why }: NextStep): boolean =>
  why.kind === 'check' && why.outcomes.some(({ chance }) => chance >= nearlyCertain);

function ownMinutes(input: ReasoningInput, step: StepName): number {
  const move = moveNamed(input.model, step);
  return move === undefined ? 0 : moveMinutes(input, move).total;
}
