import { fold } from '../../src/core/session/fold.ts';
import type { Story } from '../../src/core/session/story.ts';
import { oddSessions } from './odd-sessions.ts';

/** A job of the odd ones, by its name. */
export function oddStory(name: string): Story {
  const made = oddSessions[name]?.();
  if (made === undefined) throw new Error(`no job ${name}`);
  return fold(made.header, made.events);
}
