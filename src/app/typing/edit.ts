import type { KeyPress } from '../keys/command.ts';
import type { Typing } from './typing.ts';

/** How many letters as a person sees them: a letter with its accents is one. */
export const lettersIn = (text: string): number => graphemes(text).length;

/** Words after one more key of a field; a key that edits nothing leaves them as they are. */
export function edited(typed: Typing, { command, token }: KeyPress): Typing {
  const { before, after } = typed;
  switch (command) {
    case 'type':
      return { before: before + token, after };
    case 'erase':
      return { before: withoutLast(before), after };
    case 'erase-ahead':
      return { before, after: withoutFirst(after) };
    case 'erase-word':
      return { before: before.slice(0, wordBefore(before)), after };
    case 'erase-to-start':
      return { before: '', after };
    case 'erase-to-end':
      return { before, after: '' };
    default:
      return movedIn(typed, command);
  }
}

/** Whether a command edits a field, or moves in it. */
export const edits = (command: KeyPress['command']): boolean => editing.has(command);

const editing: ReadonlySet<KeyPress['command']> = new Set<KeyPress['command']>([
  'type',
  'erase',
  'erase-ahead',
  'erase-word',
  'erase-to-start',
  'erase-to-end',
  'to-start',
  'to-end',
  'letter-back',
  'letter-on',
  'word-back',
  'word-on',
]);

function movedIn(typed: Typing, command: KeyPress['command']): Typing {
  const { before, after } = typed;
  const all = before + after;
  switch (command) {
    case 'to-start':
      return partedAt(all, 0);
    case 'to-end':
      return partedAt(all, all.length);
    case 'letter-back':
      return partedAt(all, withoutLast(before).length);
    case 'letter-on':
      return partedAt(all, all.length - withoutFirst(after).length);
    case 'word-back':
      return partedAt(all, wordBefore(before));
    case 'word-on':
      return partedAt(all, before.length + wordAhead(after));
    default:
      return typed;
  }
}

const partedAt = (text: string, at: number): Typing => ({
  before: text.slice(0, at),
  after: text.slice(at),
});

/** Where the word before the cursor begins, the spaces behind it passed over. */
const wordBefore = (before: string): number => /\S*\s*$/u.exec(before)?.index ?? 0;

/** Where the word ahead of the cursor ends, the spaces before it passed over. */
const wordAhead = (after: string): number => /^\s*\S*/u.exec(after)?.[0].length ?? 0;

const withoutLast = (text: string): string => graphemes(text).slice(0, -1).join('');
const withoutFirst = (text: string): string => graphemes(text).slice(1).join('');

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

function graphemes(text: string): readonly string[] {
  return Array.from(segmenter.segment(text), ({ segment }) => segment);
}
