import { expect, test } from 'vitest';
import { makeProgram, press, startKeys, chooseTree } from '../../helpers/program.ts';

const screenAfter = (keys: string): string => {
  const { program } = makeProgram();
  press(program, keys);
  return program.state().screen.kind;
};

test.each([
  ['s', '<enter>', 'start'],
  ['a', '<down><enter>', 'sessions'],
  ['v', '<down><down><enter>', 'vehicles'],
  ['f', '<down><down><down><enter>', 'figures'],
  ['g', '<down><down><down><down><enter>', 'settings'],
  ['p', '<down><down><down><down><down><enter>', 'jobs'],
])('%s and the line of its own open the same', (letter, arrows, kind) => {
  expect(screenAfter(letter)).toBe(kind);
  expect(screenAfter(arrows)).toBe(kind);
});

test.each(['q', '<esc>y', '7', '<C-c>'])('%s leaves the program', (key) => {
  const made = makeProgram();

  press(made.program, key);

  expect(made.left()).toBe(true);
});

test('one Esc too many asks before it leaves the program', () => {
  const made = makeProgram();

  press(made.program, '<esc>');
  expect(made.program.state().notice?.text).toBe('Leave the program? (y: yes)');
  press(made.program, '<esc>');

  expect(made.left()).toBe(false);
  expect(made.program.state()).toMatchObject({ asked: undefined, screen: { kind: 'home' } });
});

test.each(['a', 'v', 'f', 'g', 'p', 's'])('back from %s is Home', (key) => {
  expect(screenAfter(`${key}<left>`)).toBe('home');
});

test('the cursor stops at both ends', () => {
  const { program } = makeProgram();

  press(program, '<up>');
  expect(program.state().screen).toMatchObject({ cursor: 0 });
  press(program, '<down>'.repeat(20));

  expect(program.state().screen).toMatchObject({ cursor: 6 });
});

test('a job that was put down can be picked up from the first line', () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}q`);

  press(program, '<enter>');

  expect(program.state().screen.kind).toBe('worker');
  expect(program.state().session?.events.at(-1)).toMatchObject({ kind: 'resumed' });
});

test('a tree named on the command line is the answer to the first question', () => {
  const { program } = makeProgram();
  press(program, 's');

  program.dispatch({ kind: 'tree-chosen', tree: 'rough-idle' });

  expect(program.state().screen).toMatchObject({
    form: { at: 1, answers: { tree: 'rough-idle' } },
  });
});

test('a tree that is not there is said, and the question stays', () => {
  const { program } = makeProgram();
  press(program, 's');

  program.dispatch({ kind: 'tree-chosen', tree: 'no-such' });

  expect(program.state().notice).toMatchObject({ kind: 'problem' });
  expect(program.state().screen).toMatchObject({ form: { at: 0 } });
});

test('a question of the form can be gone back to, with its answer kept', () => {
  const { program } = makeProgram();
  press(program, `${chooseTree('rough-idle')}Orchard van<enter>JB<enter>`);

  press(program, '<up><up>');

  expect(program.state().screen).toMatchObject({
    form: { at: 2, answers: { vehicle: 'Orchard van', who: 'JB' } },
  });
});
