import { expect, test } from 'vitest';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

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
