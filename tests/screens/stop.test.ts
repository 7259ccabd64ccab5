import { expect, test } from 'vitest';
import { makeProgram } from '../helpers/program.ts';
import { showIn } from '../helpers/terminal.tsx';

test.each([
  ['by itself', ['v', '\u001a']],
  ['in one read with a key before it and one behind', ['v\u001aq']],
])('Ctrl+Z %s gives the terminal to the shell', async (_, pieces) => {
  const { program } = makeProgram();
  let halted = 0;
  const terminal = await showIn(program, 80, 24, async () => {
    halted += 1;
  });

  await terminal.send(...pieces);

  expect(halted).toBe(1);
  expect(program.state().screen.kind).toBe('vehicles');
  expect(program.state().leaving).toBe(false);
  await terminal.stop();
});
