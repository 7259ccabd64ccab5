import { expect, test } from 'vitest';
import * as keymap from '../../../src/app/keys/keymap.ts';
import type { Mode } from '../../../src/app/keys/command.ts';
import { bindings } from '../../../src/app/pages/table.ts';

const commandFor = (mode: Mode, key: string) => keymap.commandFor(bindings, mode, key);
const hints = (mode: Mode) => keymap.hints(bindings, mode);

test('a digit means one thing on a screen: a reading where one is taken, else a line', () => {
  expect(commandFor('measure', '5')).toBe('type');
  expect(commandFor('look', '5')).toBe('pick-line');
});

test('a letter is a letter once a reading is being typed', () => {
  expect(commandFor('measure', 'u')).toBe('unsure');
  expect(commandFor('reading', 'u')).toBe('type');
});

test('escape never does what cannot be taken back', () => {
  const commands = new Set(
    bindings.filter(({ keys }) => keys.includes('esc')).map(({ command }) => command),
  );

  expect([...commands].toSorted()).toEqual(['go-back', 'leave-field', 'quit']);
});

test('an unlikely reading is kept by another key than the one that typed it', () => {
  expect(commandFor('reading', 'enter')).toBe('choose');
  expect(commandFor('insist', 'enter')).toBe('leave-field');
  expect(commandFor('insist', '!')).toBe('choose');
});

test('every screen over the walk can be left without Escape, which is slow in some terminals', () => {
  for (const mode of ['list', 'form-choice', 'settings', 'keys', 'apart'] as const)
    expect([mode, commandFor(mode, 'left')]).toEqual([mode, 'go-back']);
});

const samples: Readonly<Record<string, string>> = { digit: '5', letter: 'c', typed: 'z' };

test('every binding can be reached in each mode it is for', () => {
  const dead = bindings.flatMap(({ modes, keys, command }) =>
    modes === 'all'
      ? []
      : modes.flatMap((mode) =>
          keys.some((key) => commandFor(mode, samples[key] ?? key) === command)
            ? []
            : [`${mode}: ${command}`],
        ),
  );

  expect(dead).toEqual([]);
});

test('the foot line says what Enter does', () => {
  expect(hints('look')[0]).toEqual({ key: 'enter', hint: 'keep' });
  expect(hints('caution')[0]).toEqual({ key: 'digit', hint: 'its number: read' });
});

test('no letter acts that hands know as a movement from elsewhere', () => {
  const letters = new Set(['h', 'j', 'k', 'l', 'H', 'J', 'K', 'L']);

  expect(bindings.filter(({ keys }) => keys.some((key) => letters.has(key)))).toEqual([]);
});

test.each(bindings.filter(({ hint, keys }) => hint !== undefined && /^[a-z]$/.test(keys[0] ?? '')))(
  'the word for $keys on the key line has the letter, or says what is crossed out or claimed: $hint',
  ({ keys, hint = '', about }) => {
    const [key = ''] = keys;
    // Signs of their own: y says yes, x crosses out, q is quit.
    const own = ['y', 'x', 'q'].includes(key);

    expect(own || `${hint} ${about}`.toLowerCase().includes(key)).toBe(true);
  },
);
