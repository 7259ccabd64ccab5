import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import type { Program } from '../../src/app/program.ts';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import { askBook, askedReading, byBook, noBook } from '../helpers/every-screen.ts';
import { expectGolden, withoutMinute } from '../helpers/golden.ts';
import { makeProgram, press, thoughtOut } from '../helpers/program.ts';
import { find, readingsFolder, see } from '../helpers/readings.ts';

const frame = (program: Program, columns: number, rows: number): string =>
  `${renderToString(
    <ScreenFrame state={program.state()} columns={columns} rows={rows} contents={contents} />,
    { columns },
  )
    .split('\n')
    .map((row) => row.trimEnd())
    .join('\n')}\n`;

async function expectFrames(name: string, program: Program): Promise<void> {
  await thoughtOut(program);
  for (const [columns, rows] of [
    [80, 24],
    [60, 20],
  ] as const)
    expectGolden(
      `frames/readings-${name}-${columns}x${rows}.txt`,
      withoutMinute(frame(program, columns, rows)),
    );
}

test.each([
  ['book', askBook],
  ['where', `${askBook}20<enter>page`],
])('Start asks for a figure of the book: %s', async (name, keys) => {
  const { program } = makeProgram({ trees: readingsFolder });
  press(program, keys);

  expect(program.state().screen.kind).toBe('start');
  await expectFrames(`start-${name}`, program);
});

test.each([
  // One reading of two so far: what is still wanted stands beside it.
  ['two-wanted', 'feed-drop', noBook, '12.55'],
  ['two', 'feed-drop', noBook, '12.55 12.30'],
  ['two-near', 'feed-drop', noBook, '12.5 12.295'],
  ['two-miscounted', 'feed-drop', noBook, '12.55<enter>'],
  ['beyond', 'coil-ohms', noBook, 'OL'],
  ['general', 'idle-vacuum', noBook, '15.8'],
  ['own-book', 'idle-vacuum', byBook, '17'],
  ['cylinders', 'compression', noBook, '150 148 145 150 90 149'],
  ['cylinders-miscounted', 'compression', noBook, '150 148 145<enter>'],
])('the field of readings: %s', async (name, check, book, typed) => {
  const program = askedReading(check, book);
  press(program, typed);

  expect(program.state().question.mode).toBe('reading');
  await expectFrames(name, program);
});

test('nothing typed is lost to a wrong count', () => {
  const program = askedReading('feed-drop', noBook);
  press(program, '12.55<enter>');
  expect(program.state().screen).toMatchObject({
    input: { typed: { before: '12.55', after: '' } },
  });

  press(program, ' 12.30<enter>');
  expect(program.state().session?.story.findings.at(-1)).toMatchObject({
    result: 'much',
    readings: [{ value: 12.55 }, { value: 12.3 }],
  });
});

test('a state that was spent is brought back before the step that needs it', async () => {
  const program = askedReading('bowl-look', noBook, see('bowl-look', 'still'));

  await expectFrames('state', program);
  press(program, 'Zy');
  expect(program.state().session?.story.over).toEqual([]);
  expect(program.state().question.mode).toBe('look');
});

test('what was kept near its limit is told so on the line of the last finding', async () => {
  const program = askedReading('coil-ohms', noBook, find('feed-drop', '12.5 12.295'));

  expect(program.state().session?.story.findings.at(-1)?.orResult).toBe('much');
  await expectFrames('kept-near', program);
});
