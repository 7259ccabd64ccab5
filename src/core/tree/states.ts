import type { Check, Tree } from './model.ts';

/** A passing state in which alone a check tells anything, and the minutes to bring it back. */
export type Needed = {
  readonly state: string;
  readonly say: string;
  readonly minutes: number;
  /** What is there again once it was brought back: the state, and those that come with it. */
  readonly brings: readonly string[];
};

/** The passing state that a check needs; undefined for one that needs none. */
export function neededBy({ states }: Tree, check: Pick<Check, 'only-while'>): Needed | undefined {
  const state = check['only-while'];
  const named = state === undefined ? undefined : states?.[state];
  if (state === undefined || named === undefined) return undefined;
  const { say, minutes } = named;
  return { state, say, minutes, brings: broughtBack({ states }, [state]) };
}

/** States that were brought back, and those that come with them. */
export const broughtBack = (
  { states }: Pick<Tree, 'states'>,
  brought: readonly string[],
): readonly string[] => brought.flatMap((state) => [state, ...(states?.[state]?.with ?? [])]);

/** What a step does to passing states: what it needs was there, and what it spends is over. */
type Spending = {
  readonly brings?: readonly string[] | undefined;
  readonly spends?: readonly string[] | undefined;
};

/** The passing states that are over once a step was done. */
export const overAfter = (over: readonly string[], step: Spending): readonly string[] => [
  ...new Set([
    ...over.filter((state) => !(step.brings ?? []).includes(state)),
    ...(step.spends ?? []),
  ]),
];
