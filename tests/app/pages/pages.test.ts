import { expect, test } from 'vitest';
import { chooseTree, makeProgram, press, startKeys } from '../../helpers/program.ts';

test.each([
  ['keys', '?'],
  ['full', 'i'],
] as const)('the page %s goes on to its last line and no further', (kind, key) => {
  const { program } = makeProgram();
  press(program, startKeys());
  const first = () => {
    const { screen } = program.state();
    return screen.kind === kind ? screen.cursor : undefined;
  };

  press(program, `${key}${'<down>'.repeat(200)}`);
  const last = first() ?? 0;
  expect(last).toBeGreaterThan(3);
  expect(last).toBeLessThan(100);

  press(program, '<up>');
  expect(first()).toBe(last - 1);
});

test('a tree that reads volts asks for those of the system, and is not begun on 6 V', () => {
  const made = makeProgram();
  press(made.program, `${chooseTree('no-crank')}Van<enter>JB<enter><enter><enter>`);
  press(made.program, '2');

  const { notice, screen, session } = made.program.state();
  expect(notice?.kind).toBe('problem');
  expect(notice?.text).toMatch(/Written for 12 V: it judges 6 V wrong\./);
  expect([screen.kind, session]).toEqual(['start', undefined]);

  press(made.program, '1');
  expect(made.program.state().notice?.kind).not.toBe('problem');
  expect(made.program.state().screen).toMatchObject({ form: { answers: { volts: '12-volt' } } });
});
