import { currentLeg, lastFinding, type Story } from './story.ts';

/**
 * What a check is known to show in the tree of this leg, as a place among its results: by its own
 * last finding, or by a later one of a check that shows the same thing (`same`).
 */
export function knownPlace(
  story: Pick<Story, 'findings' | 'legs'>,
  check: string,
): number | undefined {
  const { checks } = currentLeg(story).tree;
  const same = checks[check]?.same;
  const kin = Object.keys(checks).filter(
    (id) => id === check || (same !== undefined && checks[id]?.same === same),
  );
  const [last] = kin
    .flatMap((id) => lastFinding(story, id) ?? [])
    .toSorted((one, other) => other.n - one.n);
  if (last === undefined) return undefined;
  return checks[last.check]?.results.findIndex(({ id }) => id === last.result);
}
