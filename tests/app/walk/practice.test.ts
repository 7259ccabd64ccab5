import { expect, test } from 'vitest';
import { shippedTree } from '../../helpers/library.ts';
import { practiceOn } from '../../helpers/practice/begun.ts';
import { makeProgram, passPages, press } from '../../helpers/program.ts';

/** A practice just opened, its cautions read, at the set-up before its first check. */
function opened() {
  const { header, secret } = practiceOn(shippedTree('rough-idle'), { seed: 'by keys' });
  const { program } = makeProgram();
  const path = 'sessions/practice.jsonl';
  program.dispatch({ kind: 'session-opened', path, header, events: [], torn: 0, secret });
  passPages(program);
  return program;
}

const kinds = (program: ReturnType<typeof opened>): readonly string[] =>
  (program.state().session?.events ?? []).map(({ kind }) => kind);
const count = (program: ReturnType<typeof opened>, kind: string): number =>
  kinds(program).filter((one) => one === kind).length;

test('leaning on any key makes no more than one check, and on Enter none', () => {
  const program = opened();
  press(program, '<enter>'.repeat(20));
  const byEnter = count(program, 'found');
  press(program, 'yZ');
  press(program, 'y'.repeat(20));

  expect(byEnter).toBe(0);
  expect(count(program, 'found')).toBe(1);
});

test('no digit says what the vehicle shows', () => {
  const program = opened();
  press(program, 'yZ123456789');

  expect(program.state().question.mode).toBe('make');
  expect(count(program, 'found')).toBe(0);
});

test('what was taken back shows the same again, and costs its minutes again', () => {
  const program = opened();
  press(program, 'yZy');
  const first = program.state().session?.story.findings[0];
  press(program, '<enter>b');
  while (program.state().session?.story.findings.length !== 0) press(program, 'Zb');
  passPages(program);
  press(program, 'Zy');
  if (program.state().question.mode === 'make') press(program, 'Zy');
  const again = program.state().session?.story.findings[0];

  expect(again?.result).toBe(first?.result);
  expect(again?.n).toBeGreaterThan(first?.n ?? 0);
});

test('a hint stands until the next answer, and its minutes are on the clock', () => {
  const program = opened();
  press(program, 'yZ');
  const before = program.state().session?.story.minutes ?? 0;
  const hidden = program.state().session?.advice;
  press(program, 'A');
  const shown = program.state().session?.story;
  press(program, 'Zy');

  expect(hidden).toBeUndefined();
  expect(shown?.hints).toHaveLength(1);
  expect((shown?.minutes ?? 0) - before).toBe(5);
  expect(program.state().session?.unadvised).toContain('a hint');
});
