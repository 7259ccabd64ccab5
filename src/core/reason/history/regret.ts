import { at } from '../../at.ts';
import type { Parsed } from '../../problem.ts';
import { good } from '../../problem.ts';
import type { Advice, NextStep } from '../advice/advice.ts';
import { refinedAdvice } from '../advice/advise.ts';
import { nearlyCertain } from '../advice/look-ahead.ts';
import { moveNamed, type StepName } from '../advice/minutes.ts';
import type { ReasoningInput } from '../belief/evidence.ts';

/** One step that was chosen, beside what the advice would have chosen from the same place. */
export type Regret = {
  readonly advice: Advice;
  /** What the advice would have done; the step itself where nothing is better. */
  readonly best: NextStep | undefined;
  /** Expected minutes given away, parts at their price: never below 0, never more than the step's own. */
  readonly minutes: number;
  /** No result of the check could have moved anything. */
  readonly tellsNothing: boolean;
  /** The short check that a repair did not wait for. */
  readonly heldBy: string | undefined;
};

export type RegretOptions = {
  readonly leaveOut?: readonly StepName[];
};

/**
 * Weighs a chosen step by what could be known when it was chosen, with the costs and the rules of the
 * advice; how it came out plays no part. A check that could tell nothing costs its own minutes; so does
 * one done while a proof waits. A repair that did not wait for a short check costs the share of its
 * minutes that goes to vehicles on which it mends nothing. No step costs more than its own minutes,
 * without opening up, setting and proof: what was best before it can still be done after it.
 */
export function regretOf(
  input: ReasoningInput,
  chosen: StepName,
  { leaveOut = [] }: RegretOptions = {},
): Parsed<Regret> {
  const advised = refinedAdvice(input, { leaveOut, own: chosen, reckon: false });
  if (advised.kind === 'bad') return advised;
  const advice = advised.value;
  const mine = advice.next.find((step) => isSame(step, chosen));
  const best = advice.next.find((step) => !isLookedAtBy(input, step, chosen)) ?? mine;
  const heldBy = advice.held.find(({ cause }) => chosen.do === 'repair' && cause === chosen.id);
  const tellsNothing = chosen.do === 'check' && mine !== undefined && isCertain(mine);
  const isBest = best !== undefined && isSame(best, chosen);
  const minutes = isBest
    ? 0
    : given(advice, chosen, {
        best,
        tellsNothing,
        own: ownMinutes(input, chosen),
        held: heldBy !== undefined,
      });
  return good({ advice, best, minutes, tellsNothing, heldBy: heldBy?.check });
}

type Weighing = {
  readonly best: NextStep | undefined;
  readonly tellsNothing: boolean;
  readonly own: number;
  readonly held: boolean;
};

/** What a step that is not the best gives away: at most its own minutes. */
function given(
  advice: Advice,
  { id }: StepName,
  { best, tellsNothing, own, held }: Weighing,
): number {
  if (tellsNothing || advice.kind === 'prove') return own;
  const needless = held ? own * (1 - chanceIn(advice, id)) : 0;
  return Math.min(own, Math.max(0, dearer(advice, best), needless));
}

export const isSame = (one: StepName, other: StepName): boolean =>
  one.do === other.do && one.id === other.id;

const dearer = ({ ownCost }: Advice, best: NextStep | undefined): number =>
  best === undefined || ownCost === undefined ? 0 : ownCost - best.cost;

const chanceIn = ({ suspects }: Advice, cause: string): number =>
  suspects.find((one) => one.cause === cause)?.chance ?? 0;

/** Evidence before parts: no repair is better than a check that tells of that very cause. */
function isLookedAtBy({ model }: ReasoningInput, step: StepName, chosen: StepName): boolean {
  if (step.do === 'check' || chosen.do === 'repair') return false;
  const cause = model.causes.findIndex(({ id }) => id === step.id);
  return model.checks.find(({ id }) => id === chosen.id)?.links[cause] !== undefined;
}

const isCertain = ({ why }: NextStep): boolean =>
  why.kind === 'check' && why.outcomes.some(({ chance }) => chance >= nearlyCertain);

/** What a step takes by its tree, alone: nothing opened, nothing set, nothing proved. */
function ownMinutes({ model }: ReasoningInput, step: StepName): number {
  const move = moveNamed(model, step);
  if (move === undefined) return 0;
  return at<{ readonly minutes: number }>(
    move.do === 'check' ? model.checks : model.causes,
    move.index,
  ).minutes;
}
