import { feedsBeforeRepair } from '../drawing/feed-before-repair.ts';
import { ladderSvg } from '../drawing/ladder-svg.ts';
import { suspectRows } from '../drawing/suspect-rows.ts';
import { suspectsSvg } from '../drawing/suspects-svg.ts';
import { waySvg } from '../drawing/way-svg.ts';
import type { BeliefStep } from '../reason/history/belief-history.ts';
import { complaintsOf, inLeg, mendedFor, type Complaint } from '../session/complaints.ts';
import { isOwn } from '../tree/own/bare.ts';
import { wayOf } from './outcome-steps.ts';
import { failedRepairs } from './blocks/ledger.ts';
import { firstLeg, type Story } from '../session/story.ts';

/** A picture of an account: the name of its file, the words under it, and the drawing itself. */
export type Picture = {
  readonly file: string;
  readonly caption: string;
  readonly svg: string;
  /** Number of the event beside which it belongs; infinite where it belongs to the end. */
  readonly at: number;
  /** Place among the complaints of the job, 0 for the first; none where it is of them all. */
  readonly complaint?: number;
};

/** The pictures that there is something to draw for, in the order in which the account shows them. */
export const picturesOf = (story: Story, history: readonly BeliefStep[]): readonly Picture[] => [
  ...wayPicture(story),
  ...complaintsOf(story).flatMap((complaint, place) =>
    suspectsPicture(story, history, { complaint, place }),
  ),
  ...feedPictures(story),
];

function wayPicture(story: Story): readonly Picture[] {
  const { tree } = firstLeg(story);
  const steps = wayOf(story);
  const caption = isOwn(tree)
    ? 'The way that was taken: each check, what it showed, and what else it could have shown.'
    : 'The way through the tree: each check, what it showed, and the branches not taken.';
  const title = complaintsOf(story).length === 1 ? `The way: ${tree.title}` : 'The way';
  return steps.length === 0
    ? []
    : [{ file: 'way.svg', caption, svg: waySvg(title, steps), at: Infinity }];
}

type Placed = { readonly complaint: Complaint; readonly place: number };

function suspectsPicture(
  story: Story,
  history: readonly BeliefStep[],
  { complaint, place }: Placed,
): readonly Picture[] {
  const suspects = suspectRows(story, history, complaint, notCuring(story));
  if (suspects === undefined) return [];
  const title = `The suspects: ${complaint.title}`;
  return [
    {
      file: numbered('suspects', place),
      caption: `${title}. How likely each was after every finding.`,
      svg: suspectsSvg(title, suspects),
      at: turnOf(story, complaint),
      complaint: place,
    },
  ];
}

/** Causes that were mended and none of whose repairs cured anything. */
function notCuring(story: Story): ReadonlySet<string> {
  const failed = failedRepairs(story);
  const causes = new Set(failed.map(({ cause }) => cause));
  for (const repair of story.repairs) if (!failed.includes(repair)) causes.delete(repair.cause);
  return causes;
}

/** The event with which a complaint's search came to its end: its cause named, else mended, else the last finding. */
function turnOf(story: Story, complaint: Complaint): number {
  const inComplaint = <T extends { readonly n: number }>(list: readonly T[]): readonly T[] =>
    complaint.legs.flatMap((leg) => inLeg(story.legs, leg, list));
  // The last repair: those before it did not cure, or were not the only one.
  const mended = mendedFor(story, complaint).at(-1);
  const named = inComplaint(story.condemned).findLast(
    ({ n, cause }) => mended === undefined || (n < mended.n && cause === mended.cause),
  );
  return (named ?? mended ?? inComplaint(story.findings).at(-1))?.n ?? Infinity;
}

const feedPictures = (story: Story): readonly Picture[] =>
  feedsBeforeRepair(story).map(({ view, shownBy, complaint }) => ({
    file: numbered('feed', complaint),
    caption:
      'The feed path before the repair: volts at each station, read or worked out, and what was lost on the way.',
    svg: ladderSvg('The feed path before the repair', view),
    at: shownBy,
    complaint,
  }));

/** `suspects.svg`, `suspects-2.svg` for the second complaint. */
const numbered = (name: string, place: number): string =>
  `${name}${place === 0 ? '' : `-${place + 1}`}.svg`;
