import { seenWords } from '../../session/safeguard.ts';
import type { Passed, Story } from '../../session/story.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, causeThing, joined, sentence } from '../words/wording.ts';
import type { Clause } from './clause.ts';

type Made = Omit<Clause, 'n' | 'at'>;

/**
 * A step that went past a safeguard, before what the event tells of itself: what had not been shown,
 * the tree's caution whole, and the person's own reason.
 */
export function pastSafeguard(context: AccountContext, passed: Passed, made: Made): Made {
  const { story, who } = context;
  const words = `${who} went on ${stepThing(story, passed)} although ${holdsThen(story, passed)}. ${reasonWords(passed)}`;
  return {
    ...made,
    kind: made.kind === 'aside' ? 'other' : made.kind,
    begins: true,
    phrase: ({ when }) => {
      const before = sentence(when === '' ? words : `${when} ${words}`);
      return made.kind === 'aside' ? before : `${before} ${made.phrase({ when: '' })}`;
    },
  };
}

/** What had not been shown before a step, with what the tree says of it, in its own words. */
export const holdsThen = (story: Story, { holds, leg }: Passed): string =>
  joined(
    holds.map(
      (hold) =>
        `${askedThing(story, hold.check, leg)}, which comes first, ${seenWords(hold, 'then')} ("${hold.otherwise}")`,
    ),
  );

export const reasonWords = ({ why }: Passed): string => `The reason given: "${why.trim()}".`;

/** The step that was gone on with. */
export function stepThing(story: Story, { step, leg }: Passed): string {
  switch (step.kind) {
    case 'check':
      return `with ${askedThing(story, step.check, leg)}`;
    case 'repair':
      return `with the repair (${causeThing(story, step.cause)})`;
    case 'standing':
      return `(${joined(Object.entries(step.set).map(([part, state]) => `${part} ${state}`))})`;
  }
}
