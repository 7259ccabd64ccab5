import { at } from '../../at.ts';
import type { Check, Tree } from '../model.ts';

/** A check that leaves a cause unseen more often than this is no look for it. */
const mostMissed = 0.5;

const missed = ({ points }: Check, cause: string): number => {
  const row = Object.hasOwn(points, cause) ? points[cause] : undefined;
  return row === undefined ? 1 : at(row, 0);
};

/**
 * The checks to ask after what may have brought a cause about: for each such cause that was not
 * mended and that no check has been asked for, the one that misses it least.
 * @param known whether a check has been answered, or passed over
 */
export function checksBehind(
  { causes, checks, complaint }: Tree,
  cause: string,
  { known, mended }: { known: (check: string) => boolean; mended: readonly string[] },
): readonly string[] {
  const behind = causes[cause]?.because ?? [];
  return behind.flatMap((reason) => {
    if (!Object.hasOwn(causes, reason) || mended.includes(reason)) return [];
    const shows = Object.entries(checks)
      .filter(([id, check]) => id !== complaint.confirm && missed(check, reason) < mostMissed)
      .toSorted(([, one], [, other]) => missed(one, reason) - missed(other, reason))
      .map(([id]) => id);
    return shows.some(known) ? [] : shows.slice(0, 1);
  });
}
