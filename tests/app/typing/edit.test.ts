import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Command } from '../../../src/app/keys/command.ts';
import { textOf, type Typing } from '../../../src/app/typing/typing.ts';
import { edited, edits } from '../../../src/app/typing/edit.ts';

const after = (typed: Typing, command: Command, token = ''): Typing =>
  edited(typed, { command, token });

/** `air |cleaner`: the bar stands where the next letter goes. */
function at(shown: string): Typing {
  const [before = '', behind = ''] = shown.split('|');
  return { before, after: behind };
}

// What each key does to a line is what the default (emacs) keys of a POSIX shell's line editor do: from memory.
test.each<[shown: string, command: Command, expected: string]>([
  ['air |cleaner', 'type', 'air x|cleaner'],
  ['air |cleaner', 'erase', 'air|cleaner'],
  ['|cleaner', 'erase', '|cleaner'],
  ['air |cleaner', 'erase-ahead', 'air |leaner'],
  ['air|', 'erase-ahead', 'air|'],
  ['the air |cleaner', 'erase-word', 'the |cleaner'],
  ['the air  |', 'erase-word', 'the |'],
  ['air |cleaner', 'erase-to-start', '|cleaner'],
  ['air |cleaner', 'erase-to-end', 'air |'],
  ['air |cleaner', 'to-start', '|air cleaner'],
  ['air |cleaner', 'to-end', 'air cleaner|'],
  ['air |cleaner', 'letter-back', 'air| cleaner'],
  ['air |cleaner', 'letter-on', 'air c|leaner'],
  ['|air', 'letter-back', '|air'],
  ['air|', 'letter-on', 'air|'],
  ['the air |cleaner', 'word-back', 'the |air cleaner'],
  ['the| air cleaner', 'word-on', 'the air| cleaner'],
])('%s, %s: %s', (shown, command, expected) => {
  expect(after(at(shown), command, 'x')).toEqual(at(expected));
});

test.each(['e\u0301', '👩‍🔧', '🇫🇮', '한'])(
  'a letter as a person sees it goes at once: %s',
  (letter) => {
    const typed = at(`a${letter}|b`);

    expect(after(typed, 'erase')).toEqual(at('a|b'));
    expect(after(after(typed, 'letter-back'), 'erase-ahead')).toEqual(at('a|b'));
  },
);

const commands: readonly Command[] = [
  'to-start',
  'to-end',
  'letter-back',
  'letter-on',
  'word-back',
  'word-on',
];

test('moving never changes the words, and every key of a field counts as one', () => {
  fc.assert(
    fc.property(
      fc.string({ unit: 'grapheme' }),
      fc.string({ unit: 'grapheme' }),
      fc.constantFrom(...commands),
      (before, behind, command) => {
        const typed = { before, after: behind };
        expect(textOf(after(typed, command))).toBe(textOf(typed));
        expect(edits(command)).toBe(true);
      },
    ),
    { seed: 20_260_411 },
  );
});
