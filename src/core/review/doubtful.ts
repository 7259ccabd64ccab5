import { contradictions } from '../session/contradiction.ts';
import type { Story } from '../session/story.ts';
import { kinOf } from '../tree/kin.ts';

/** A finding as it was written down, by its event. */
type Written = { readonly n: number; readonly check: string };

const written = ({ entries }: Pick<Story, 'entries'>): readonly Written[] =>
  entries.flatMap(({ event }) =>
    event.kind === 'found' || event.kind === 'proved' ? [{ n: event.n, check: event.check }] : [],
  );

/** Findings that contradict the one before them of the same thing, answered or not. */
export function doubtfulFindings(story: Story): readonly Written[] {
  const doubtful = new Set([
    ...contradictions(story).map(({ later }) => later.n),
    ...story.settled.map(({ later }) => later),
  ]);
  return written(story).filter(({ n }) => doubtful.has(n));
}

/** Whether the check of a finding, or one of the same thing, was done again after it. */
export function isRepeated(story: Story, { n, check }: Written): boolean {
  const kin = story.legs.flatMap(({ tree }) => kinOf(tree, check));
  return written(story).some((one) => one.n > n && kin.includes(one.check));
}
