import { feedBeforeRepair, ladderSvg } from '../drawing/ladder-svg.ts';
import { suspectBands } from '../drawing/suspect-bands.ts';
import { suspectsSvg } from '../drawing/suspects-svg.ts';
import { waySteps } from '../drawing/way-steps.ts';
import { waySvg } from '../drawing/way-svg.ts';
import { frontMatter } from './front-matter.ts';
import { showMarkdown } from './markdown.ts';
import { outlineBy, pictureNames, type Record } from './outline.ts';
import { makeTeller, type AccountOptions, type Teller } from './teller.ts';
import type { Story } from '../session/story.ts';

/** An account ready for the disk: one text, and its pictures by file name. */
export type Written = {
  readonly markdown: string;
  readonly pictures: Pictures;
};

export type Pictures = { readonly [file: string]: string };

export type WriteOptions = AccountOptions & { readonly frontMatter?: boolean };

/** The whole account of a story; the same story gives the same bytes. */
export function writeUp(story: Story, record: Record, options: WriteOptions = {}): Written {
  const teller = makeTeller(story, options);
  const head = options.frontMatter === true ? frontMatter(teller) : '';
  return {
    markdown: `${head}${showMarkdown(outlineBy(teller, record))}`,
    pictures: options.pictures === undefined ? {} : picturesOf(teller),
  };
}

function picturesOf({ story, trail }: Teller): Pictures {
  const steps = waySteps(story);
  const bands = suspectBands(story, trail);
  const feed = feedBeforeRepair(story);
  const title = story.legs[0]?.tree.title ?? '';
  return {
    ...(steps.length > 0 && { [pictureNames.way]: waySvg(`The way: ${title}`, steps) }),
    ...(bands !== undefined && {
      [pictureNames.suspects]: suspectsSvg('The suspects over the session', bands),
    }),
    ...(feed !== undefined && {
      [pictureNames.feed]: ladderSvg('The feed path before the repair', feed),
    }),
  };
}
