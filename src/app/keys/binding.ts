import type { Mode } from '../walk/question.ts';
import type { Command } from './command.ts';
import type { Token } from './tokens.ts';

export type Binding = {
  readonly modes: readonly Mode[] | 'all';
  /** A token, `digit` for any of 0 to 9, `line` for the key of a line, or `typed` for any character. */
  readonly keys: readonly Token[];
  readonly command: Command;
  /** Shown in the foot line when given: short, and what it does rather than what it is called. */
  readonly hint?: string;
  /** Longer words for the page of keys. */
  readonly about: string;
};
