import type { OpenSession } from '../state.ts';
import {
  feedView,
  ladderLine,
  ladderLines,
  type FeedView,
} from '../../core/drawing/ladder-view.ts';

const viewOf = ({ story, advice }: OpenSession): FeedView | undefined =>
  feedView(story, new Map(advice?.suspects.map(({ cause, chance }) => [cause, chance])));

/** `FEED      post 12.6 ─ stud 12.6 ╳ bulkhead 0.2 ╌ ammeter ?`; empty for a tree without a feed path. */
export function feedLine(session: OpenSession): string {
  const view = viewOf(session);
  return view === undefined ? '' : `FEED      ${ladderLine(view)}`;
}

/** The whole ladder as a page to read. */
export function feedLines(session: OpenSession): readonly string[] {
  const view = viewOf(session);
  return view === undefined ? ['This tree has no feed path.'] : ladderLines(view);
}
