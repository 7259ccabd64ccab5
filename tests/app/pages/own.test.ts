import { expect, test } from 'vitest';
import { emptyNameForm } from '../../../src/app/pages/own/form.ts';
import { offeredNow } from '../../../src/app/pages/own/page.ts';
import { readingLines } from '../../../src/app/pages/reading.ts';
import { shippedTrees } from '../../helpers/library.ts';
import type { Program } from '../../../src/app/program.ts';
import { currentLeg } from '../../../src/core/session/story.ts';
import { makeProgram, passPages, press, startKeys } from '../../helpers/program.ts';

const begun = 's<end><enter>Wipers stop half way<enter>1Orchard van<enter>JB<enter><enter><enter>1';
const tried = 'Nthe wipers on wet glass<enter>they stop half way<enter>they sweep it all<enter>2';

function after(keys: string): Program {
  const { program } = makeProgram();
  press(program, keys);
  return program;
}

const storyOf = (program: Program) => {
  const { session } = program.state();
  if (session === undefined) throw new Error('no session is open');
  return session.story;
};

test('letters that no complaint has are the first words of one in own words', () => {
  const program = after('ssunroof<enter>');

  expect(program.state().screen).toMatchObject({
    kind: 'start',
    form: { typed: { before: 'sunroof', after: '' } },
  });
});

test('a job without a tree is walked by keys to its proof', () => {
  const program = after(
    `${begun}${tried}Nthe wiper fuse<enter>1whole<enter>3clip green<enter>Rclip corroded<enter>fuse box<enter>`,
  );
  passPages(program);
  press(program, 'yfuse 4, green to the bone<enter>ycleaned<enter><enter><enter><enter>1');

  const story = storyOf(program);
  expect(story.due).toEqual({ kind: 'proven' });
  expect(story.findings.map(({ check, words }) => `${check} ${words ?? '-'}`)).toEqual([
    'own-wipers-stop-half-way-test -',
    'wiper-fuse clip green',
    'own-wipers-stop-half-way-test -',
  ]);
  expect(story.condemned).toMatchObject([{ found: 'fuse 4, green to the bone' }]);
});

test('a healthy band that was typed makes the check take a reading', () => {
  const program = after(`${begun}${tried}Nvolts at the motor<enter>4 11 V or more<enter>`);

  expect(program.state().question.mode).toBe('measure');
  press(program, '7.5<enter>');
  expect(storyOf(program).findings.at(-1)).toMatchObject({ result: 'low' });
});

test('a check of the library is found by typing and comes with its own results', () => {
  const program = after(`${begun}${tried}Nvolts batt<down><enter>`);
  const { named } = storyOf(program);

  expect(named.at(-1)).toMatchObject({ kind: 'check' });
  expect(named.at(-1)?.from).toBeDefined();
});

test('Esc goes back a question with what was answered, and out at the first', () => {
  const program = after(`${begun}Nwipers<enter>half<enter><esc>`);

  expect(program.state().screen).toMatchObject({ form: { at: 1, typed: { before: 'half' } } });
  press(program, '<esc><esc>y');
  expect(program.state().screen.kind).toBe('walk');
});

test('what is asked first may not stay empty', () => {
  const program = after(`${begun}N<enter>`);

  expect(program.state().notice).toMatchObject({ kind: 'problem' });
  expect(storyOf(program).entries).toEqual([]);
});

test('b takes a named check back with its beginning', () => {
  const program = after(`${begun}${tried}Nthe wiper fuse<enter>1<enter>b`);

  expect(storyOf(program).due).toEqual({ kind: 'own', test: false });
  expect(Object.keys(currentLeg(storyOf(program)).tree.checks)).toHaveLength(1);
});

test('what it may be is told as it was named, with no number that nobody gave', () => {
  const program = after(`${begun}${tried}Rground rusted<enter><enter>xw`);
  const { screen } = program.state();
  const lines = readingLines(program.state(), screen as Parameters<typeof readingLines>[1]);

  expect(lines.join('|')).toMatch(/No advice.*NAMED\|  ground rusted/);
  expect(lines.join(' ')).not.toMatch(/\d/);
});

test('N names nothing where the complaint has a tree', () => {
  const program = after(startKeys());
  const { screen } = program.state();
  press(program, 'N');

  expect(program.state().screen).toEqual(screen);
  expect(program.state().notice?.text).toContain('has a tree');
});

test('the checks of its group stand there before anything is typed', () => {
  const offered = offeredNow(after(`${begun}${tried}N`).state(), emptyNameForm('check'));
  const trees = new Set(offered.map(({ tree }) => tree));

  expect(offered).toHaveLength(9);
  for (const tree of shippedTrees().filter(({ id }) => trees.has(id)))
    expect(tree.group).toBe('electrical');
});

test('of what it is about nothing need be known: then only typing finds a check', () => {
  const program = after(
    `${begun.slice(0, begun.indexOf('1Orchard'))}7Orchard van<enter>JB<enter><enter><enter>1${tried}N`,
  );

  expect(currentLeg(storyOf(program)).tree.group).toBeUndefined();
  expect(offeredNow(program.state(), emptyNameForm('check'))).toEqual([]);
});
