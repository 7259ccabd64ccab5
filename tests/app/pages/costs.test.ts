import { expect, test } from 'vitest';
import { costFacts, costLines } from '../../../src/app/pages/costs.ts';
import type { Program } from '../../../src/app/program.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

function begun(): Program {
  const { program } = makeProgram();
  press(program, startKeys());
  return program;
}

const storyOf = (program: Program) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return session.story;
};

test('a part bought apart is typed in one line, stands in the list, and is taken back', () => {
  const program = begun();

  press(program, 'M<enter>2 x fuse link at 3,50 EUR, spare<enter>');

  expect(program.state().screen.kind).toBe('costs');
  expect(costFacts(storyOf(program))).toContain('Parts   7.00 EUR');
  expect(costLines(storyOf(program)).at(-1)?.words).toBe(
    '2 x fuse link at 3,50 EUR each (spare) = 7.00 EUR',
  );
  press(program, '<esc>b');
  expect(storyOf(program).bought).toEqual([]);
});

test('opening the page, its field and leaving both records nothing', () => {
  const program = begun();
  const before = storyOf(program).entries.length;

  press(program, 'M<enter><enter><down><enter><esc><esc>');

  expect(storyOf(program).entries).toHaveLength(before);
  expect(program.state().screen.kind).toBe('walk');
});

test('a limit is typed part by part, changed and taken off again', () => {
  const program = begun();

  press(program, 'M2<C-u>1:30<enter>3<C-u>200 EUR<enter>');

  expect(storyOf(program).limit).toMatchObject({ minutes: 90, money: '200 EUR' });
  press(program, '2<C-u>soon<enter>');
  expect(program.state().notice?.text).toContain('is no number of minutes');
  press(program, '<C-u><enter>');
  expect(storyOf(program).limit?.minutes).toBeUndefined();
  expect(storyOf(program).limit?.money).toBe('200 EUR');
});
