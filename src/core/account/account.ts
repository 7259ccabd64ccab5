import { frontMatter } from './blocks/front-matter.ts';
import { showMarkdown } from './markdown.ts';
import { outlineBy, type Record } from './outline.ts';
import { makeTeller, type AccountOptions } from './context.ts';
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
    pictures: Object.fromEntries(teller.pictures.map(({ file, svg }) => [file, svg])),
  };
}
