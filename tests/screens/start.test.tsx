import { renderToString } from 'ink';
import { expect, test } from 'vitest';
import { contents } from '../../src/screens/contents.tsx';
import { ScreenFrame } from '../../src/screens/root.tsx';
import {
  chooseTree,
  makeProgram,
  makeUnloaded,
  goOn,
  press,
  startKeys,
  thoughtOut,
} from '../helpers/program.ts';
import { exampleShop } from '../helpers/shop-folder.ts';
import { readingsFolder } from '../helpers/readings.ts';

type Program = ReturnType<typeof makeProgram>['program'];

const textOf = (program: Program, loaded = true): string =>
  renderToString(
    <ScreenFrame
      state={program.state()}
      columns={80}
      rows={24}
      contents={loaded ? contents : undefined}
    />,
    { columns: 80 },
  );

const toText = `${chooseTree('rough-idle')}Orchard van<enter>JB<enter>`;

test.each([
  ['the vehicle', chooseTree('rough-idle'), 'No plate, no owner'],
  ['who works', `${chooseTree('rough-idle')}Orchard van<enter>`, 'Initials will do'],
  ['altitude', toText, 'In ft unless you type the unit'],
  ['temperature', `${toText}<enter>`, 'In F unless you type the unit'],
])('%s says how it is to be answered', (_, keys, hint) => {
  const { program } = makeProgram();
  press(program, keys);

  expect(textOf(program)).toContain(hint);
});

test("a tree moved to the owner's jobs says from how many, once it is chosen", () => {
  const options = { folder: exampleShop(), trees: 'trees' };
  const on = makeProgram({ ...options, settings: { ownJobs: 'on' } }).program;
  const off = makeProgram(options).program;

  press(on, 's');
  expect(textOf(on)).not.toContain('from your');
  for (const program of [on, off])
    press(program, chooseTree('rough-idle').replace('s', program === on ? '' : 's'));

  expect(textOf(on)).toContain('Odds and minutes: from your 2 jobs.');
  expect(textOf(off)).not.toContain('from your');
});

test('metric units are said where they are set', () => {
  const { program } = makeProgram({ settings: { units: 'metric' } });
  press(program, toText);

  expect(textOf(program)).toContain('In m unless you type the unit');
});

test('what has been answered stands above the question, a fact in words', () => {
  const { program } = makeProgram();
  press(program, `${toText}5200ft<enter><enter>1`);
  const text = textOf(program).replace(/\s+/g, ' ');

  expect(text).toContain('What do you call the vehicle? Orchard van');
  expect(text).toContain('Height above sea level here? 5200ft');
  expect(text).toContain('Air temperature? -');
});

test('a tree with limits by the book asks for its figures, and where each was read', async () => {
  const { program } = makeProgram({ trees: readingsFolder });
  press(program, 's1<enter>Van<enter><enter><enter><enter><end><enter>2');

  expect(textOf(program)).toContain('Vacuum at idle, by its own book?');
  expect(textOf(program)).toContain('In inHg unless you type the unit.');
  press(program, '40<enter>');
  expect(textOf(program)).toContain('a limit lies outside 0 to 30 inHg');
  press(program, '<back><back>18<enter>');
  expect(textOf(program)).toContain('Where was that read?');
  press(program, 'page 12<enter>');
  await thoughtOut(program);

  expect(program.state().session?.header.vehicle).toEqual({
    name: 'Van',
    facts: { cylinders: 'six' },
    sheet: { 'idle-vacuum': { value: 18, unit: 'inHg', typed: '18', where: 'page 12' } },
  });
});

test('a figure of the book that nobody knows is passed by', async () => {
  const { program } = makeProgram({ trees: readingsFolder });
  press(program, 's1<enter>Van<enter><enter><enter><enter><end><enter>2<enter>');
  await thoughtOut(program);

  expect(program.state().session?.header.vehicle).toEqual({
    name: 'Van',
    facts: { cylinders: 'six' },
  });
});

test('before the rest has loaded Home is whole but for its rules', () => {
  const { program } = makeUnloaded();
  const text = textOf(program, false);

  expect(text).toContain('Start a new job (s)');
  expect(text).toContain('s start');
  // The first frame keeps to ASCII: see `Edge`.
  expect(Array.from(text).every((mark) => mark < '\u0080')).toBe(true);
});

test('a disk that refuses is said in the place of every other notice', () => {
  const { program } = makeProgram();
  press(program, startKeys());
  const problem = { code: 'ENOSPC', message: 'The disk is full.', mend: 'Make room.' };
  program.dispatch({ kind: 'not-kept', problem });

  expect(textOf(program)).toContain('NOT KEPT: The disk is full. Make room.');
  expect(textOf(program)).toContain('not kept');
});

test('a job goes from repair to proof to the end, each on a screen of its own', () => {
  const { program } = makeProgram();
  press(program, `${startKeys()}y2r2`);
  const { question } = program.state();
  expect(question.mode).toBe('cause-caution');
  const seen = new Set<string>();
  for (let guard = 0; guard < 40 && program.state().question.mode !== 'proven'; guard += 1) {
    const { mode, due } = program.state().question;
    seen.add(textOf(program).split('\n')[2]?.trim().split(' ')[0] ?? '');
    if (due?.asked?.purpose === 'proof' && mode === 'look') press(program, 'Z1');
    else goOn(program);
  }

  expect([...seen]).toEqual(expect.arrayContaining(['IS', 'REPAIR:', 'PROOF:']));
  expect(textOf(program)).toContain("PROVEN: the complaint's own test shows good");
});
