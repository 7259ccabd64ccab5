import { complaintsOf, inLeg } from '../session/complaints.ts';
import type { Finding, Story } from '../session/story.ts';
import { feedView, type FeedView } from './feed-view.ts';

/** A feed path with a stretch that loses too much, as it was read before its first repair. */
export type ReadFeed = {
  readonly view: FeedView;
  /** Number of the finding that first showed the stretch. */
  readonly shownBy: number;
  /** Place among the complaints of the job, 0 for the first. */
  readonly complaint: number;
};

/** The feed paths of a job, one a complaint at most: those on which the volts show a bad stretch. */
export const feedsBeforeRepair = (story: Story): readonly ReadFeed[] =>
  complaintsOf(story).flatMap(({ legs }, complaint): readonly ReadFeed[] => {
    const [first] = legs.flatMap((leg) => readInLeg(story, leg));
    return first === undefined ? [] : [{ ...first, complaint }];
  });

type Read = Omit<ReadFeed, 'complaint'>;

function readInLeg(story: Story, leg: number): readonly Read[] {
  const [mended] = inLeg(story.legs, leg, story.repairs);
  const found = inLeg(story.legs, leg, story.findings).filter(
    ({ n }) => n < (mended?.n ?? Infinity),
  );
  // What was mended is what the findings came to speak for.
  const chances = mended && new Map([[mended.cause, 1]]);
  const viewOf = (findings: readonly Finding[]): FeedView | undefined =>
    feedView(
      {
        ...story,
        legs: story.legs.slice(0, leg + 1),
        repairs: [],
        findings,
        due: { kind: 'closed' },
      },
      chances && { chances, ranked: [] },
    );
  const view = viewOf(found);
  const bad = view?.located.faults[0]?.stretch;
  if (view === undefined || bad === undefined) return [];
  const shows = (findings: readonly Finding[]): boolean =>
    viewOf(findings)?.located.faults.some(
      ({ stretch }) => stretch.from === bad.from && stretch.to === bad.to,
    ) ?? false;
  const shownBy = found.find((_, index) => shows(found.slice(0, index + 1)));
  return shownBy === undefined ? [] : [{ view, shownBy: shownBy.n }];
}
