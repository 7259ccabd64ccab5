import { expect, test } from 'vitest';
import { roadNotes } from '../../../src/core/account/blocks/road.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function after(keys: string) {
  const { program } = makeProgram();
  press(program, `${startKeys()}${keys}`);
  return program.state();
}
const notes = (keys: string) => {
  const { session } = after(keys);
  return session === undefined ? [] : roadNotes(session.story).map(({ text }) => text);
};

test('R takes one line after the other, each an event of its own, until one is left empty', () => {
  const keys = 'yRypulls clean<enter>hot: steady<enter>';

  expect(notes(keys)).toEqual(['pulls clean', 'hot: steady']);
  expect(after(keys).question.mode).toBe('text');
  expect(after(`${keys}<enter>`).question.mode).not.toBe('text');
});

test('Enter held down writes nothing', () => {
  expect(notes(`yRy${'<enter>'.repeat(20)}`)).toEqual([]);
});
