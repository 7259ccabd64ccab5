import type { Kind } from '../screen.ts';
import type { Token } from './tokens.ts';

/** What a key asks for. The kind of a screen asks to open that screen. */
export type Command =
  | Kind
  | 'up'
  | 'down'
  | 'page-up'
  | 'page-down'
  | 'first-line'
  | 'last-line'
  | 'choose'
  /** Says that what the page claims is so: it was done, it is this, it is closed. */
  | 'confirm'
  /** The next page of what is claimed, and the one before. */
  | 'read-on'
  | 'read-back'
  | 'pick-line'
  | 'type'
  | 'erase'
  /** What else edits a field, as in the line of a shell. */
  | 'erase-ahead'
  | 'erase-word'
  | 'erase-to-start'
  | 'erase-to-end'
  | 'to-start'
  | 'to-end'
  | 'letter-back'
  | 'letter-on'
  | 'word-back'
  | 'word-on'
  | 'leave-field'
  | 'go-back'
  | 'take-back'
  | 'answer-anew'
  /** Practice: makes the check on screen, and the hidden vehicle answers. */
  | 'make'
  /** Practice: shows what the advice knows, for its minutes. */
  | 'hint'
  | 'unsure'
  | 'go-past'
  | 'skip'
  /** It was looked at, and was not that. */
  | 'not-this'
  | 'note'
  /** Reads the board as it came off, or as it goes back. */
  | 'turn-board'
  | 'to-do'
  | 'road'
  /** Another complaint on the job that is open. */
  | 'complaint'
  /** Somebody who is not on the list yet. */
  | 'new-name'
  | 'conditions'
  | 'account'
  | 'quicker'
  | 'switch-lead'
  | 'turn-code'
  | 'keep'
  | 'play'
  | 'faster'
  | 'to-turning'
  | 'to-turning-back'
  | 'quit'
  | 'redraw';

/** A key as a screen gets it: what it asks for, and which key it was. */
export type KeyPress = { readonly command: Command; readonly token: Token };

/** Which keys count: a mode of the walk, of a list or a form, or a screen with keys of its own. */
export type Mode =
  | Kind
  | 'list'
  /** A list that letters narrow. */
  | 'search'
  | 'form-text'
  | 'form-choice'
  | 'look'
  | 'measure'
  /** A check of a practice: the hidden vehicle answers it. */
  | 'make'
  | 'reading'
  | 'insist'
  | 'text'
  /** It is asked first whether a key counts. */
  | 'asked'
  | 'safeguard'
  /** Before a proof: what is not back yet. */
  | 'before-proof'
  | 'caution'
  | 'cause-caution'
  | 'prepare'
  | 'cause-prepare'
  | 'condition'
  | 'named'
  | 'repair'
  | 'leg'
  | 'stop'
  /** No tree leads on: what comes next is named in own words. */
  | 'own'
  | 'proven'
  | 'closed'
  /** A closed job that may be opened again. */
  | 'reopen'
  /** A figure worked out. */
  | 'worked';

export type Binding = {
  readonly modes: readonly Mode[] | 'all';
  /** A token, `digit` for any of 0 to 9, `letter` for a letter or a blank, or `typed` for any character. */
  readonly keys: readonly Token[];
  readonly command: Command;
  /** Shown in the foot line when given: short, and what it does rather than what it is called. */
  readonly hint?: string;
  /** Longer words for the page of keys. */
  readonly about: string;
};
