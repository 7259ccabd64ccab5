import { spentOn } from '../account/blocks/ledger.ts';
import { askedThing } from '../account/words/wording.ts';
import { minutesWritten } from '../tree/counted/as-written.ts';
import type { Finding, Story } from '../session/story.ts';
import { isOwn } from '../tree/own/bare.ts';
import type { Took } from './job.ts';

/**
 * What took less than this share of its plan was typed in afterwards, one answer behind the other: it is
 * no measure of the work (judgment).
 */
const typedAfter = 0.1;

/** The longest that counts, in times the plan: beyond it somebody did something else between (judgment). */
const interrupted = 4;

/**
 * The minutes that checks took, by the machine's uptime. Left out is what the record cannot measure: a
 * finding told for another time, one that something was opened for in the same go, one typed in
 * afterwards. What was interrupted counts as the longest that counts.
 */
export const tookIn = (story: Story): Took[] =>
  measuredIn(story).map(({ finding: { check, leg }, planned, minutes }) => ({
    tree: story.legs[leg]?.tree.id ?? '',
    check,
    name: askedThing(story, check, leg),
    planned,
    minutes,
  }));

/** The same by the findings that they ended in. */
export function measuredIn(story: Story): readonly Measured[] {
  const byNumber = new Map(story.findings.map((finding) => [finding.n, finding]));
  return spentOn(story).steps.flatMap(({ entry, worked, withOpening }): Measured[] => {
    const finding = byNumber.get(entry.event.n);
    const tree = finding && story.legs[finding.leg]?.tree;
    if (finding === undefined || tree === undefined || isOwn(tree)) return [];
    const planned = minutesWritten(tree, finding.check, story.facts);
    const told = finding.told !== undefined || withOpening || entry.correctedBy.length > 0;
    if (told || planned <= 0 || worked < typedAfter * planned) return [];
    return [{ finding, planned, minutes: Math.min(worked, interrupted * planned) }];
  });
}

type Measured = { readonly finding: Finding; readonly planned: number; readonly minutes: number };
