import { transition, type Transition } from '../effect.ts';
import { isField, narrows } from '../keys/field.ts';
import { isTyped, type Token } from '../keys/tokens.ts';
import type { State } from '../state.ts';
import { refused } from './field-press.ts';

/**
 * Keys that came in one read: typed ahead, or pasted where the terminal does not mark a paste. Keys
 * typed ahead act one by one. Words with no field open do nothing; several lines in a field are one text.
 */
export function together(
  state: State,
  tokens: readonly Token[],
  paste: (state: State, text: string) => Transition,
): Transition {
  const text = asText(tokens);
  const oneByOne = transition(state, { kind: 'strike', tokens });
  if (text === undefined || state.drawn?.kind === 'too-small') return oneByOne;
  const { mode } = state.question;
  if (isField(mode)) return isOneText(mode, text) ? paste(state, text) : oneByOne;
  if (narrows(mode) && !text.includes('\n')) return oneByOne;
  if (mode === 'measure' && beginsReading.test(text) && !hasMore(text)) return oneByOne;
  return isProse(text) ? refused(state, text.replace(/\s+/g, ' ').trim()) : oneByOne;
}

/** What was typed as text; undefined where a key was among it that is none. */
const asText = (tokens: readonly Token[]): string | undefined =>
  tokens.every((token) => isTyped(token) || token === 'enter' || token === 'tab')
    ? tokens.map((token) => (token === 'enter' ? '\n' : token === 'tab' ? '\t' : token)).join('')
    : undefined;

const beginsReading = /^[-+.,\d]/;

/** Whether something stands behind the end of its first line. */
const hasMore = (text: string): boolean => /\n[^\n]/.test(text.trimStart());

/** Readings typed ahead are kept one by one; any other lines belong together. */
const isOneText = (mode: State['question']['mode'], text: string): boolean =>
  hasMore(text) && (mode !== 'reading' || isProse(text));

/**
 * Whether text reads as words of a language rather than as keys: two words of two letters, or one of
 * five. The commands of a screen are single letters, with a digit or an arrow between most of them.
 */
function isProse(text: string): boolean {
  const words = text.match(/\p{L}{2,}/gu) ?? [];
  return words.length > 1 || words.some((word) => Array.from(word).length > 4);
}
