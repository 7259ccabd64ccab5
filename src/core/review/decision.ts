import type { ChanceMap } from '../reason/history/belief-history.ts';
import type { StepName } from '../reason/advice/minutes.ts';
import type { NextStep } from '../reason/advice/advice.ts';
import { isGuess as isUnlikely } from '../reason/grade.ts';
import type { Finding, Story } from '../session/story.ts';

/**
 * `asked`: the tree asks it of everybody (the complaint, the baseline, what a repair wants repeated).
 * `proof`: the complaint's own test after a repair, and readings before it that show what was mended. `verified`: a doubtful finding looked at again.
 * `followed`: the step that stood on screen, or that the advice put first. `look`: an open look at a
 * cause that was named, or at the very part that leads. `unsure`: nobody could tell; `passed`: passed over
 * with a reason. `own`: a step without a tree, or without a belief to weigh it by. `chosen`: all
 * else, and only that is charged.
 */
export type DecisionKind =
  | 'asked'
  | 'proof'
  | 'verified'
  | 'followed'
  | 'look'
  | 'own'
  | 'unsure'
  | 'passed'
  | 'chosen';

/** A step that would have been better, by what could be known then. */
export type Better = {
  readonly step: NextStep;
  /** What it would have parted, or why it comes first, in words. */
  readonly because: string;
};

/** One check or repair as it was decided on: what was known, expected, done and found. */
export type Decision = {
  readonly n: number;
  readonly at: string;
  readonly leg: number;
  /** Who worked then; undefined where nobody said. */
  readonly who: string | undefined;
  readonly kind: DecisionKind;
  readonly step: StepName;
  /** Minutes that the tree plans for the step alone, and those that passed; undefined where not told. */
  readonly planned: number | undefined;
  readonly taken: number;
  /** The chances of all causes as they were known before the step, and after it. */
  readonly before: ChanceMap | undefined;
  readonly after: ChanceMap | undefined;
  /** How likely each result of the check was, by its id. */
  readonly foreseen: ReadonlyMap<string, number>;
  /** The result that somebody had said to expect. */
  readonly expected: string | undefined;
  /** What a check showed, as it was written down then. */
  readonly finding: Finding | undefined;
  /** Why a check was passed over. */
  readonly reason: string | undefined;
  /** How likely a cause was when it was mended; undefined for checks, and where nobody gave odds. */
  readonly chance: number | undefined;
  /** Mending it needs no part and can be taken back. */
  readonly trial: boolean;
  readonly better: Better | undefined;
  /** Whole minutes given away by the choice: never more than the step took, nor than it is planned to. */
  readonly charged: number;
  readonly tellsNothing: boolean;
};

/** A repair, chosen and not led to, of what was less likely to be there than not. */
export const isGuess = ({ kind, chance, trial }: Decision): boolean =>
  kind === 'chosen' && !trial && chance !== undefined && isUnlikely(chance);

/** All that a job's choices gave away, in whole minutes: the one sum that is told anywhere. */
export const givenAway = (decisions: readonly Decision[]): number =>
  decisions.reduce((sum, { charged }) => sum + charged, 0);

/** A decision as it stood: before it, just before its answer, and after it. */
export type Moment = {
  readonly before: Story;
  readonly atAnswer: Story;
  readonly after: Story;
  /** The whole job: only for what was never to be had, and for what was taken back as a slip. */
  readonly finished: Story;
  readonly step: StepName;
  readonly planned: number | undefined;
  readonly taken: number;
};
