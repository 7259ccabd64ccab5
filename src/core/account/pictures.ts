import { feedBeforeRepair, ladderSvg } from '../drawing/ladder-svg.ts';
import { suspectBands } from '../drawing/suspect-bands.ts';
import { suspectsSvg } from '../drawing/suspects-svg.ts';
import { waySteps } from '../drawing/way-steps.ts';
import { waySvg } from '../drawing/way-svg.ts';
import type { BeliefStep } from '../reason/history/belief-history.ts';
import { isOwn } from '../tree/own/bare.ts';
import { firstLeg, type Story } from '../session/story.ts';

/** A picture of an account: the name of its file, the words under it, and the drawing itself. */
export type Picture = { readonly file: string; readonly caption: string; readonly svg: string };

/** The pictures that there is something to draw for, in the order in which the account shows them. */
export function picturesOf(story: Story, history: readonly BeliefStep[]): readonly Picture[] {
  const title = firstLeg(story).tree.title;
  const steps = waySteps(story);
  const bands = suspectBands(story, history);
  const feed = feedBeforeRepair(story);
  return [
    steps.length > 0 && {
      file: 'way.svg',
      caption: isOwn(firstLeg(story).tree)
        ? 'The way that was taken: each check with what it showed, what else it could have shown faded beside it.'
        : 'The way through the tree: each check with what it showed, the branches not taken faded beside it.',
      svg: waySvg(`The way: ${title}`, steps),
    },
    bands !== undefined && {
      file: 'suspects.svg',
      caption: 'The suspects over the session: how likely each was after every finding.',
      svg: suspectsSvg('The suspects over the session', bands),
    },
    feed !== undefined && {
      file: 'feed.svg',
      caption:
        'The feed path before the repair: the volts read at each station, and what was lost on the way to it.',
      svg: ladderSvg('The feed path before the repair', feed),
    },
  ].filter((picture) => picture !== false);
}
