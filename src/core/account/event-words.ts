import type { Entry } from '../session/correct.ts';
import type { Story } from '../session/story.ts';
import { phrase } from './way.ts';

/** One event in a few words, as the account would tell it. */
export const eventWords = (story: Story, entry: Entry): string =>
  phrase(story, entry) ?? entry.event.kind.replaceAll('-', ' ');
