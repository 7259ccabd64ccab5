import { currentLeg, lastFinding, type Story } from './story.ts';

/**
 * The result that a check is known to show in the tree of this leg: by its own last finding, or by a
 * later one of a check that shows the same thing (`same`), at the same place among the results.
 */
export function knownResult(
  story: Pick<Story, 'findings' | 'legs'>,
  check: string,
): string | undefined {
  const { checks } = currentLeg(story).tree;
  const same = checks[check]?.same;
  if (same === undefined) return lastFinding(story, check)?.result;
  const [last] = Object.keys(checks)
    .filter((id) => checks[id]?.same === same)
    .flatMap((id) => lastFinding(story, id) ?? [])
    .toSorted((one, other) => other.n - one.n);
  const place = checks[last?.check ?? '']?.results.findIndex(({ id }) => id === last?.result) ?? -1;
  return checks[check]?.results[place]?.id;
}
