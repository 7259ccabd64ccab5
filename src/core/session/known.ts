import { kinOf } from '../tree/kin.ts';
import { isStale, type Known } from '../tree/way.ts';
import { currentLeg, lastFinding, type Finding, type Story } from './story.ts';

/** The last finding of a check, or of one that shows the same thing (`same`). */
export function lastShown(
  story: Pick<Story, 'findings' | 'legs'>,
  check: string,
): Finding | undefined {
  return kinOf(currentLeg(story).tree, check)
    .flatMap((id) => lastFinding(story, id) ?? [])
    .toSorted((one, other) => other.n - one.n)[0];
}

/**
 * What is known of a check in the tree of this leg, as the vehicle is now: what it showed last, by
 * its place among the results, unless a repair has made that stale; or that it was passed over.
 */
export function knownOf(
  story: Pick<Story, 'findings' | 'legs' | 'repairs' | 'unsure' | 'skipped'>,
  check: string,
): Known {
  const { tree } = currentLeg(story);
  const last = lastShown(story, check);
  const place = last && tree.checks[last.check]?.results.findIndex(({ id }) => id === last.result);
  if (last !== undefined && place !== undefined) {
    const since = story.repairs.filter(({ n }) => n > last.n).map(({ cause }) => cause);
    const proves = check === tree.complaint.confirm;
    if (proves || !isStale(tree, last.check, place, since)) return place;
  }
  const passed = [...story.unsure, ...story.skipped].some((one) => one.check === check);
  return passed ? 'passed' : undefined;
}
