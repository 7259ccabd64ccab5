import { expect, test } from 'vitest';
import type { Program } from '../../../src/app/program.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

/** At the complaint's own test of rough-idle, ready to be answered. */
const ready = `${startKeys()}y`;

function at(keys: string): Program {
  const { program } = makeProgram();
  press(program, keys);
  return program;
}
const kinds = (program: Program): readonly string[] =>
  (program.state().session?.events ?? []).map(({ kind }) => kind);
const notice = (program: Program): string => program.state().notice?.text ?? '';

test('e and a number say what is expected; the check is asked as before', () => {
  const before = at(ready);
  const program = at(`${ready}e2`);

  expect(kinds(program)).toEqual([...kinds(before), 'expected']);
  expect(program.state().screen.kind).toBe('walk');
  expect(program.state().session?.story.due).toEqual(before.state().session?.story.due);
  expect(notice(program)).toMatch(/^Kept: you expect "/);
});

test('it is not asked twice, and b takes it back', () => {
  const program = at(`${ready}e2e`);
  expect(notice(program)).toContain('Kept already');

  press(program, 'b');
  expect(program.state().session?.story.expected).toEqual([]);
  press(program, 'e1');
  expect(program.state().session?.story.expected.length).toBe(1);
});

test('Enter on no line, a number too high and escape say nothing', () => {
  expect(kinds(at(`${ready}e<enter>9<esc>`))).toEqual(kinds(at(ready)));
});

test('an answer that is put right was expected before it was given, or not at all', () => {
  const program = at(`${ready}2`);
  const n = program.state().session?.story.findings.at(-1)?.n ?? 0;
  expect(n).toBeGreaterThan(0);
  press(program, 'tae');

  expect(notice(program)).toContain('answered before');
});
