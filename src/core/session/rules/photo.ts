import type { ActionOf } from '../action.ts';
import { fromLegs, type Story } from '../story.ts';
import { accept, refuse, type Ruling, type World } from './ruling.ts';

/** A photo is recorded once it lies beside the session, with the hash of its bytes. */
export function photo(action: ActionOf<'photo'>, story: Story, { photo: kept }: World): Ruling {
  const { about, caption = '' } = action;
  if (about !== undefined && !isThere(story, about))
    return refuse(
      'unknown-subject',
      `There is no check, cause or part "${about}" here.`,
      'Give the id of one in about, `part:` and the number of the event for a part off, or leave it out.',
      about,
    );
  if (kept === undefined)
    return refuse('photo-not-kept', 'The photo was not read.', 'Name its file once more.');
  return accept([
    { kind: 'photographed', ...kept, caption, ...(about !== undefined && { about }) },
  ]);
}

function isThere(story: Story, about: string): boolean {
  const part = /^part:(\d+)$/.exec(about)?.[1];
  if (part !== undefined)
    return story.entries.some(
      ({ event: { n }, said }) => n === Number(part) && said?.kind === 'part-off',
    );
  return (
    fromLegs(story, ({ tree }) =>
      Object.hasOwn(tree.checks, about) || Object.hasOwn(tree.causes, about) ? true : undefined,
    ) === true
  );
}
