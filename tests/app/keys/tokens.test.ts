import { expect, test } from 'vitest';
import type { Key } from 'ink';
import { tokens } from '../../../src/app/keys/tokens.ts';

// Each row is what Ink 8 hands to useInput for keys that arrive in one read (found by experiment).
test.each<[title: string, input: string, key: Partial<Key>, expected: readonly string[]]>([
  ['Down', '', { downArrow: true }, ['down']],
  ['Enter', '\r', { return: true }, ['enter']],
  ['Enter Enter', '\r\r', {}, ['enter', 'enter']],
  ['y Enter', 'y\r', {}, ['y', 'enter']],
  ['two letters', 'jj', {}, ['j', 'j']],
  ['Tab Enter', '\t\r', {}, ['tab', 'enter']],
  ['Ctrl+S twice', '\x13\x13', {}, ['C-s', 'C-s']],
  ['Ctrl+C', 'c', { ctrl: true }, ['C-c']],
  ['Escape then j at once', 'j', { meta: true }, ['esc', 'j']],
  ['Escape then Enter at once', '', { return: true, meta: true }, ['esc', 'enter']],
  ['Escape Escape', '', { escape: true, meta: true }, ['esc', 'esc']],
  ['Escape', '', { escape: true }, ['esc']],
  ['Enter typed before raw mode', '\n', {}, ['enter']],
  ['Backspace among letters', 'a\x7fb', {}, ['a', 'back', 'b']],
  ['Delete', '', { delete: true }, ['delete']],
  ['Ctrl+Left', '', { leftArrow: true, ctrl: true }, ['C-left']],
  ['a wide character', '日本', {}, ['日', '本']],
  ['a key let go', 'a', { eventType: 'release' }, []],
])('%s', (_, input, key, expected) => {
  expect(tokens(input, key)).toEqual(expected);
});
