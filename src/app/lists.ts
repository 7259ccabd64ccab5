import type { Action } from '../core/session/action.ts';
import { currentLeg, lastFinding, type Story } from '../core/session/story.ts';

/** A check that can be chosen instead of the one on screen. */
export type OtherCheck = { readonly id: string; readonly done: boolean; readonly minutes: number };

/** All checks: those not done yet first, the quicker before the longer. Access counts once, unless open. */
export function otherChecks(story: Story): readonly OtherCheck[] {
  const { tree, shop } = currentLeg(story);
  return Object.entries(tree.checks)
    .map(([id, check]) => ({
      id,
      done: lastFinding(story, id) !== undefined,
      minutes:
        check.minutes +
        check.access
          .filter((access) => !story.open.includes(access))
          .reduce((sum, access) => sum + (shop.accesses[access]?.open ?? 0), 0),
    }))
    .toSorted((a, b) => Number(a.done) - Number(b.done) || a.minutes - b.minutes);
}

/** Causes by their odds in the tree, the likeliest first; those repaired already last. */
export function suspects(
  story: Story,
): readonly { readonly id: string; readonly repaired: boolean }[] {
  const { causes } = currentLeg(story).tree;
  return Object.entries(causes)
    .toSorted(([, a], [, b]) => b.odds - a.odds)
    .map(([id]) => ({ id, repaired: story.repairs.some(({ cause }) => cause === id) }))
    .toSorted((a, b) => Number(a.repaired) - Number(b.repaired));
}

/** What is off the vehicle or open on it now. */
export function apart(story: Story): readonly { readonly name: string; readonly mend: Action }[] {
  const { shop } = currentLeg(story);
  return [
    ...story.open.map((id) => ({
      name: shop.accesses[id]?.name ?? id,
      mend: { do: 'access', close: id } as const,
    })),
    ...story.partsOff.map(({ part }) => ({
      name: part,
      mend: { do: 'part-on', part } as const,
    })),
  ];
}

export type Ending = {
  readonly as: 'fixed' | 'handed-on' | 'given-up' | 'not-reproduced';
  readonly label: string;
};

export const endings: readonly Ending[] = [
  { as: 'fixed', label: 'fixed and proven' },
  { as: 'handed-on', label: 'handed on as it stands' },
  { as: 'given-up', label: 'given up' },
  { as: 'not-reproduced', label: 'the complaint could not be made to happen' },
];
