import { isPractice } from '../core/session/header/is-practice.ts';
import { hintMinutes, isHinted } from '../core/session/rules/practice.ts';
import type { Story } from '../core/session/story.ts';

/** In practice the advice is a hint: it is not shown before it was asked for. */
export const hidesAdvice = (story: Story): boolean =>
  isPractice(story.header) && story.revealed === undefined && !isHinted(story);

/** Said where the suspects would stand. */
export const adviceIsHint = `In practice the suspects are a hint: A shows them until the next answer, for ${hintMinutes} minutes.`;
