import type { Cause, Check } from '../../tree/model.ts';
import { refuseUnknown, type Ruling } from './ruling.ts';
import { currentLeg, type Story } from '../story.ts';

/** The check of the tree that is being walked, by its id. */
export const checkOf = (story: Story, id: string): Check | undefined => {
  const { checks } = currentLeg(story).tree;
  return Object.hasOwn(checks, id) ? checks[id] : undefined;
};

export const noSuchCheck = (story: Story, id: string): Ruling =>
  refuseUnknown('check', id, Object.keys(currentLeg(story).tree.checks));

/** Cautions whose reading must be said: what can maim. */
export function toBeRead(story: Story, cautions: readonly string[]): readonly string[] {
  const { shop } = currentLeg(story);
  return cautions.filter((id) => shop.cautions[id]?.acknowledge === true);
}

/** Cautions of a step whose reading must be said, and has not been yet. */
export function unread(story: Story, step: string, cautions: readonly string[]): readonly string[] {
  const read = story.acknowledged[step] ?? [];
  return toBeRead(story, cautions).filter((id) => !read.includes(id));
}

/** The cause of the tree that is being walked, by its id. */
export const causeOf = (story: Story, id: string): Cause | undefined => {
  const { causes } = currentLeg(story).tree;
  return Object.hasOwn(causes, id) ? causes[id] : undefined;
};

export const noSuchCause = (story: Story, id: string): Ruling =>
  refuseUnknown('cause', id, Object.keys(currentLeg(story).tree.causes));

export const toldAt = ({ told }: { readonly told?: string | undefined }) =>
  told === undefined ? {} : { told };
