import { partedBy } from '../../reason/belief/parting.ts';
import { complaintsOf, isProvenGone, mendedFor } from '../../session/complaints.ts';
import type { Repaired, Story } from '../../session/story.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { failedRepairs } from '../blocks/ledger.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, asClause, causeIn, checkIn, minuteWords, sentence } from '../words/wording.ts';

/** What the job taught: the check that would have told before a wrong repair, and the sign of each proven cause. */
export function lessonWords(context: AccountContext): readonly string[] {
  const { story } = context;
  return complaintsOf(story).flatMap((complaint) => {
    if (!isProvenGone(story, complaint)) return [];
    const repairs = mendedFor(story, complaint);
    const [proven] = repairs.slice(-1);
    if (proven === undefined || isOwn(story.legs[proven.leg]?.tree ?? { id: '' })) return [];
    const failed = failedRepairs(story).filter(({ n }) => repairs.some((one) => one.n === n));
    const missed = failed.flatMap((one) => missedCheck(story, one, proven) ?? []);
    return [...missed.slice(0, 1), ...signOf(story, proven)];
  });
}

/** The check made after a repair that did not cure, which parts what was mended from what it was. */
function missedCheck(story: Story, failed: Repaired, proven: Repaired): string | undefined {
  const tree = story.legs[failed.leg]?.tree;
  const both = [failed.cause, proven.cause];
  if (tree === undefined || !both.every((id) => Object.hasOwn(tree.causes, id))) return undefined;
  const telling = story.findings.find(
    ({ n, check, leg }) =>
      n > failed.n &&
      n < proven.n &&
      leg === failed.leg &&
      check !== tree.complaint.confirm &&
      partedBy(
        tree,
        check,
        both.map((id) => [id, 0.5] as const),
      ) !== undefined,
  );
  const check = telling && checkIn(story, telling.check, telling.leg);
  if (telling === undefined || check === undefined) return undefined;
  const took = failed.minutes === undefined ? '' : ` of ${minuteWords(failed.minutes)}`;
  return sentence(
    `next time ${askedThing(story, telling.check, telling.leg)} comes before a repair${took}: about ${minuteWords(check.minutes)} tell ${causeIn(story, failed.cause, failed.leg)} from ${causeIn(story, proven.cause, failed.leg)}`,
  );
}

/** How the tree says that a cause shows itself. */
function signOf(story: Story, { cause, leg }: Repaired): readonly string[] {
  const shows = story.legs[leg]?.tree.causes[cause]?.shows;
  if (shows === undefined) return [];
  return [sentence(`the sign to know ${causeIn(story, cause, leg)} by: ${asClause(shows)}`)];
}
