import type { Key } from 'ink';

/** A key by our name (`enter`, `up`, `C-c`) or the character typed. */
export type Token = string;

const named = [
  ['return', 'enter'],
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['pageUp', 'pgup'],
  ['pageDown', 'pgdn'],
  ['home', 'home'],
  ['end', 'end'],
  ['escape', 'esc'],
  ['backspace', 'back'],
  ['delete', 'delete'],
] as const;

/**
 * One Ink input event as our keys, in order. Keys that come in one read arrive as one event (and
 * Enter or Tab among them as plain characters), so each character is a key of its own here; Escape
 * followed at once by a key arrives as that key with `meta`, and we bind no Alt keys.
 */
export function tokens(input: string, key: Partial<Key>): readonly Token[] {
  if (key.eventType === 'release') return [];
  const escape = key.meta === true ? ['esc'] : [];
  const name = named.find(([flag]) => key[flag] === true)?.[1];
  if (name === 'esc') return ['esc'].concat(escape);
  if (name !== undefined) return [...escape, key.ctrl === true ? withCtrl(name) : name];
  if (key.tab === true) return [...escape, key.shift === true ? 'backtab' : 'tab'];
  if (key.ctrl === true) return [...escape, `C-${input}`];
  return [...escape, ...Array.from(input, character)];
}

/** Ctrl with an arrow moves by words; with any other named key it changes nothing. */
const withCtrl = (name: Token): Token => (name === 'left' || name === 'right' ? `C-${name}` : name);

function character(typed: string): Token {
  if (typed === '\r' || typed === '\n') return 'enter';
  if (typed === '\t') return 'tab';
  if (typed === '\x7f' || typed === '\b') return 'back';
  return typed < ' ' ? `C-${String.fromCharCode(typed.charCodeAt(0) + 96)}` : typed;
}

/** Whether a token is one typed character rather than a named key. */
export const isTyped = (token: Token): boolean => Array.from(token).length === 1;

/** Whether a token is a letter of any script, or the blank between two words. */
export const isLetter = (token: Token): boolean => /^(?:\p{L}| )$/u.test(token);

export const isDigit = (token: Token): boolean => /^[0-9]$/.test(token);
