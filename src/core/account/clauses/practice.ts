import type { PayloadOf } from '../../session/event.ts';
import { tellingCause, type Story } from '../../session/story.ts';
import { asClause, joined } from '../words/wording.ts';

/** Hidden causes by the names the tree has for them. */
export const hiddenNames = (story: Story, causes: readonly string[]): string =>
  joined(
    causes.map((id) => {
      const cause = tellingCause(story, id);
      return asClause(cause?.short ?? cause?.name ?? id);
    }),
  );

/** What a practice had hidden, once it was told. */
export function revealedWords(
  story: Story,
  { as, causes = [] }: Pick<PayloadOf<'revealed'>, 'as' | 'causes'>,
): string {
  if (as === 'lost' || causes.length === 0)
    return 'what had been hidden could not be told: its secret was lost';
  return `the hidden ${causes.length === 1 ? 'fault was' : 'faults were'} ${hiddenNames(story, causes)}`;
}
