import { expect, test } from 'vitest';
import { textOf } from '../../../src/app/typing/typing.ts';
import { typedIn } from '../../../src/app/typing/drafts.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

const long = 'the fan belt squeals when the lamps are on';

function atFirstCheck() {
  const { program } = makeProgram();
  press(program, `${startKeys()}y`);
  return program;
}
type Program = ReturnType<typeof atFirstCheck>;

const field = (program: Program): string | undefined => {
  const typed = typedIn(program.state().screen);
  return typed && textOf(typed);
};
const events = (program: Program) => program.state().session?.events ?? [];

test('Escape asks before it leaves a field with more than a few letters', () => {
  const program = atFirstCheck();

  press(program, `n${long}<esc>`);

  expect(field(program)).toBe(long);
  expect(program.state().question.mode).toBe('asked');
  expect(program.state().notice?.text).toContain('Leave it?');
});

test('a note that was left stands in its field again, on any check, and is kept from there', () => {
  const program = atFirstCheck();
  press(program, `n${long}<esc>y`);
  expect(program.state().question.mode).toBe('look');

  press(program, '2');
  press(program, 'Zn');
  expect(field(program)).toBe(long);
  press(program, '<enter>n');

  expect(events(program).at(-1)).toMatchObject({ kind: 'noted', text: long });
  expect(field(program)).toBe('');
});

test('Escape, Enter or a letter goes on typing, and the letter stands in the field', () => {
  const program = atFirstCheck();

  press(program, `n${long}<esc><esc>`);
  expect(program.state().question.mode).toBe('text');
  press(program, `<esc><enter>`);
  expect(program.state().question.mode).toBe('text');
  press(program, `<esc>s`);

  expect(field(program)).toBe(`${long}s`);
  expect(events(program).some(({ kind }) => kind === 'noted')).toBe(false);
});

test('Escape struck again and again leaves no field with words in it', () => {
  const program = atFirstCheck();

  press(program, `n${long}${'<esc>'.repeat(21)}`);

  expect(field(program)).toBe(long);
});

test('the reason for one check is not the reason for another', () => {
  const program = atFirstCheck();
  press(program, 'xno tach in this van<esc>y');

  press(program, '2Z');
  press(program, 'o5x');

  expect(field(program) ?? '').toBe('');
});

test('a start form that was left is taken up where it was', () => {
  const { program } = makeProgram();
  press(program, 's1<enter>Orchard van<esc><esc><esc>');
  expect(program.state().screen.kind).toBe('home');

  press(program, 's1<enter>');

  expect(field(program)).toBe('Orchard van');
});

test('leaving the program from a field with words is asked too, and a second time goes', () => {
  const program = atFirstCheck();

  press(program, `n${long}<C-c>`);
  expect(program.state().leaving).toBe(false);
  press(program, '<C-c>');

  expect(program.state().leaving).toBe(true);
});

test('a paste of many lines is one text, and goes where the cursor is', () => {
  const program = atFirstCheck();
  press(program, 'nbelt<C-a>');

  program.dispatch({ kind: 'pasted', text: 'fan\n  and pump \r\n' });

  expect(field(program)).toBe('fan and pumpbelt');
});
