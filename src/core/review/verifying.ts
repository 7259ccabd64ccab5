import { beliefHistory } from '../reason/history/belief-history.ts';
import { contradictions } from '../session/contradiction.ts';
import type { Kind } from '../session/event.ts';
import { currentLeg, type Finding, type Story } from '../session/story.ts';
import { kinOf } from '../tree/kin.ts';

/** A result that comes less often than this, by all that was known before it, is worth a second look. */
const unlikelyUnder = 0.2;

/** What may move something that was read before. */
const moves: ReadonlySet<Kind> = new Set([
  'part-off',
  'part-on',
  'aid-on',
  'aid-off',
  'access',
  'standing',
]);

/** The last finding of the same thing, with no repair since. */
export function repeatedBy(story: Story, check: string): Finding | undefined {
  const kin = kinOf(currentLeg(story).tree, check);
  const last = story.findings.findLast((one) => kin.includes(one.check));
  return last?.repairs === story.repairs.length ? last : undefined;
}

/**
 * Whether looking again is worth praise: what was found before had been put right, lay between two
 * results, contradicts another, was not to be expected, or something was moved since.
 */
export function isDoubtful(story: Story, found: Finding): boolean {
  if (found.corrected || found.orResult !== undefined) return true;
  const { n } = found;
  const disputed =
    contradictions(story).some(({ earlier, later }) => earlier.n === n || later.n === n) ||
    story.settled.some(({ earlier, later }) => earlier === n || later === n);
  const moved = story.entries.some(
    ({ event, said }) =>
      event.n > n && said !== undefined && moves.has(said.kind) && !('implied' in said),
  );
  if (disputed || moved) return true;
  const foreseen = beliefHistory(story).find((one) => one.n === n)?.expected;
  return foreseen !== undefined && foreseen < unlikelyUnder;
}
