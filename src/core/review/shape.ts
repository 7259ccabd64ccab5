import type { Comparison } from './comparison.ts';
import type { Decision } from './decision.ts';
import type { Expectations } from './expectations.ts';
import type { Habits } from './habits.ts';
import type { Skills } from './skills.ts';

/** How many vehicles with the same fault are made up for a comparison, if not said otherwise. */
export const usualVehicles = 30;

/** One person's share of a job. */
export type Share = {
  readonly who: string;
  readonly skills: Skills;
  readonly expectations: Expectations;
  readonly guesses: number;
  readonly givenAway: number;
  readonly steps: number;
};

/** One session as a mentor would look at it: what was done and why, and no marks. */
export type Review = {
  readonly session: string;
  /** Everybody who worked, in the order in which they came; the first is who opened the job. */
  readonly who: string;
  readonly workers: readonly string[];
  readonly vehicle: string;
  /** On a made-up vehicle: never counted together with jobs on real ones. */
  readonly practice: boolean;
  readonly opened: string;
  readonly complaint: string;
  /** No tree was about the complaint: there are no odds and no order to hold the work against. */
  readonly withoutTree: boolean;
  readonly closed: string;
  readonly minutes: {
    /** Worked, by the clock. */
    readonly used: number;
    /** Given away by choices, by what was known then: whole minutes. */
    readonly givenAway: number;
    readonly comparison: Comparison | undefined;
  };
  readonly decisions: readonly Decision[];
  readonly talk: readonly Told[];
  /** How the other steps were, each sort with its number. */
  readonly rest: string;
  readonly guesses: number;
  readonly skills: Skills;
  readonly people: readonly Share[];
  readonly expectations: Expectations;
  readonly habits: Habits;
};

/** A decision worth talking about, in words. */
export type Told = {
  readonly n: number;
  readonly title: string;
  readonly known: string;
  readonly expected: string;
  readonly chosen: string;
  readonly found: string;
  readonly better: string;
  readonly ask: string;
};
