import type { Cause, Check } from '../../tree/model.ts';
import { refuse, refuseUnknown, type Refused, type Ruling, type World } from './ruling.ts';
import { currentLeg, type Story } from '../story.ts';

/** The check of the tree that is being walked, by its id. */
export const checkOf = (story: Story, id: string): Check | undefined => {
  const { checks } = currentLeg(story).tree;
  return Object.hasOwn(checks, id) ? checks[id] : undefined;
};

export const noSuchCheck = (story: Story, id: string): Ruling =>
  refuseUnknown('check', id, Object.keys(currentLeg(story).tree.checks));

/** The cause of the tree that is being walked, by its id. */
export const causeOf = (story: Story, id: string): Cause | undefined => {
  const { causes } = currentLeg(story).tree;
  return Object.hasOwn(causes, id) ? causes[id] : undefined;
};

export const noSuchCause = (story: Story, id: string): Ruling =>
  refuseUnknown('cause', id, Object.keys(currentLeg(story).tree.causes));

export const toldAt = ({ told }: { readonly told?: string | undefined }) =>
  told === undefined ? {} : { told };

/** What exactly was found, in the person's own words. */
export const wordsOf = ({ text }: { readonly text?: string | undefined }) =>
  text === undefined || text.trim() === '' ? {} : { words: text.trim() };

/** A tree of the library with its shop. */
export type Found = NonNullable<ReturnType<World['tree']>>;

export const treeNamed = (id: string, world: World): Found | Refused =>
  world.tree(id) ??
  refuse(
    'unknown-tree',
    `There is no tree "${id}" in the library.`,
    'See "droplight trees list".',
    id,
  );

export const unsaid = (text: string, what: string): Refused | undefined =>
  text === ''
    ? refuse('nothing-said', `It does not say ${what}.`, 'Say it in a few words.')
    : undefined;
