import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readingLines } from '../../../src/app/pages/reading.ts';
import { history } from '../../../src/commands/jobs/history.ts';
import type { Program } from '../../../src/app/program.ts';
import { runCommand } from '../../helpers/commands.ts';
import { makeProgram, press } from '../../helpers/program.ts';
import { exampleShop, generateShop } from '../../helpers/shop-folder.ts';

const shown = ({ state }: Program): string => {
  const { screen } = state();
  return screen.kind === 'jobs' ? readingLines(state(), screen).join('\n') : screen.kind;
};

test('past jobs are told on a page of Home in the words of the command', async () => {
  const folder = exampleShop();
  const { program } = makeProgram({ folder });
  const told = await runCommand(history, [], { folder });

  press(program, 'p');

  await expect.poll(() => shown(program)).toBe(told.out.trimEnd());
});

test('the page says how far the reading is, and who leaves it stops that', async () => {
  const folder = exampleShop();
  generateShop(join(folder, 'sessions'), 60, { trees: ['no-supply'] });
  const { program } = makeProgram({ folder });

  press(program, 'p');
  expect(shown(program)).toBe('Reading sessions: 0 of 66');
  press(program, '<esc>');
  await new Promise((done) => setTimeout(done, 50));

  expect(program.state().screen.kind).toBe('home');
});

test('a folder without a session says so', async () => {
  const { program } = makeProgram();

  press(program, 'p');

  await expect.poll(() => shown(program)).toBe('There is no session here yet.');
});
