import { expect, test } from 'vitest';
import { figureLines } from '../../../src/app/pages/figure-page.ts';
import { typing } from '../../../src/app/typing/typing.ts';
import { makeProgram, press, startKeys } from '../../helpers/program.ts';

const toVacuum = `${'<down>'.repeat(figureLines.findIndex(({ id }) => id === 'vacuum-at-altitude'))}<enter>`;

function onFigure(from = 'f') {
  const made = makeProgram();
  press(made.program, `${from}${toVacuum}`);
  return made;
}

const pageOf = ({ program }: ReturnType<typeof makeProgram>) => {
  const { screen } = program.state();
  if (screen.kind !== 'figure') throw new Error(`on ${screen.kind}`);
  return screen.page;
};

test('inputs are typed one after the other, and the last Enter works them out', () => {
  const made = onFigure();

  press(made.program, '5200<enter><enter>15<enter>');

  expect(pageOf(made).result.join('\n')).toContain('14.8 inHg');
  expect(made.program.state().question.mode).toBe('worked');
});

test('what cannot be is refused with what to mend, and stays to be mended', () => {
  const made = onFigure();

  press(made.program, 'high<enter><enter><enter>');

  expect(made.program.state().notice?.kind).toBe('problem');
  expect(pageOf(made).result).toEqual([]);
  expect(pageOf(made).fields[0]?.typed).toEqual(typing('high'));
});

test('Enter on a result goes back to its inputs', () => {
  const made = onFigure();
  press(made.program, '5200<enter><enter>15<enter>');

  press(made.program, '<enter>');

  expect(pageOf(made).result).toEqual([]);
  expect(pageOf(made).fields[0]?.typed).toEqual(typing('5200'));
});

test('a result is kept in the session as a note with its numbers', () => {
  const made = onFigure(`${startKeys()}v`);
  press(made.program, '5200<enter><enter>15<enter>ny');

  expect(made.program.state().screen.kind).toBe('walk');
  expect(made.program.state().notice?.text).toBe('Kept in the session.');
  expect(made.program.state().session?.events.at(-1)).toMatchObject({
    kind: 'noted',
    figure: { figure: 'vacuum-at-altitude' },
  });
});

test('with no session open a result cannot be kept, and that is said', () => {
  const made = onFigure();

  press(made.program, '5200<enter><enter>15<enter>n');

  expect(pageOf(made).result.length).toBeGreaterThan(0);
  expect(made.program.state().notice?.text).toContain('No session is open');
});

test('back goes to the list, then to where it was opened from', () => {
  const made = onFigure(`${startKeys()}v`);

  press(made.program, '<esc>');
  expect(made.program.state().screen.kind).toBe('figures');
  press(made.program, '<esc>');

  expect(made.program.state().screen.kind).toBe('walk');
});

test('letters struck quickly, or in one read, narrow a list and are no words out of place', () => {
  const { program } = makeProgram();
  press(program, 'f');
  press(program, 'fuse');
  expect(program.state().screen).toMatchObject({ kind: 'figures', sought: 'fuse' });

  program.dispatch({ kind: 'struck-together', tokens: Array.from(' link') });
  expect(program.state().screen).toMatchObject({ kind: 'figures', sought: 'fuse link' });
  press(program, '<esc>');
  expect(program.state().screen).toMatchObject({ kind: 'figures', sought: '' });
});
