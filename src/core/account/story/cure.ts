import { complaintsOf, isProvenGone, mendedFor } from '../../session/complaints.ts';
import type { Story } from '../../session/story.ts';

/** Whether an event came after the repair that ended its complaint: nothing is suspected any more. */
export function isCured({ story }: { readonly story: Story }, n: number): boolean {
  return cures(story).some(({ from, until }) => n > from && n < until);
}

type Cure = { readonly from: number; readonly until: number };

const kept = new WeakMap<Story, readonly Cure[]>();

/** From each repair that is proven to have ended its complaint to the next complaint, or the end. */
function cures(story: Story): readonly Cure[] {
  const known = kept.get(story);
  if (known !== undefined) return known;
  const made = complaintsOf(story).flatMap((complaint): readonly Cure[] => {
    const last = mendedFor(story, complaint).at(-1);
    if (last === undefined || !isProvenGone(story, complaint)) return [];
    return [{ from: last.n, until: story.legs[last.leg + 1]?.since ?? Infinity }];
  });
  kept.set(story, made);
  return made;
}
