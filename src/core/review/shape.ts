import type { Ledger } from '../account/blocks/ledger.ts';
import { guessUnder } from '../account/clauses/repairs.ts';
import type { Decision } from './decisions.ts';
import type { Habits } from './habits.ts';

/** How many made-up vehicles the tree's own order is walked on, if not said otherwise. */
export const usualVehicles = 200;

/** A choice this close to the best, in minutes, is as good as it. Our own judgment. */
export const asGood = 1;

/** Minutes given away that are worth a word. Our own judgment. */
export const dear = 5;

/** What luck did: it is told apart from the choice, which is weighed by what was known. */
export type Luck = {
  readonly n: number;
  readonly kind: 'lucky guess' | 'sound choice that failed' | 'slower check that settled it';
  readonly words: string;
};

/** One session as a mentor would look at it: minutes and evidence, no marks. */
export type Review = {
  readonly session: string;
  readonly who: string;
  readonly vehicle: string;
  readonly opened: string;
  readonly complaint: string;
  /** No tree was about the complaint: there are no odds and no order to hold the work against. */
  readonly withoutTree: boolean;
  readonly closed: string;
  readonly minutes: {
    readonly used: number;
    /** Expected minutes to a proven repair by the advised order, from the same start. */
    readonly advised: number | undefined;
    /** The same by the tree's own order: a mean over simulated vehicles. */
    readonly ownOrder: number | undefined;
    /** Given away by choices, by what was known then. */
    readonly lost: number;
    readonly ledger: Ledger;
  };
  readonly decisions: readonly Decision[];
  readonly guesses: number;
  readonly toldNothing: number;
  readonly habits: Habits;
  readonly luck: readonly Luck[];
  readonly strengths: readonly string[];
  readonly practise: readonly string[];
};

/** A repair of what was less likely to be there than not. */
export const isGuess = (decision: Decision): decision is Decision & { readonly chance: number } =>
  decision.chance !== undefined && decision.chance < guessUnder;
