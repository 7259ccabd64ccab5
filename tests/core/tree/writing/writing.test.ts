import { expect, test } from 'vitest';
import { readMarks } from '../../../../src/core/tree/writing/marks.ts';
import { idFor } from '../../../../src/core/tree/writing/names.ts';
import { nextQuestion, standingAnswers } from '../../../../src/core/tree/writing/next-question.ts';
import { readAnswer } from '../../../../src/core/tree/writing/question.ts';
import { readResults } from '../../../../src/core/tree/writing/read-results.ts';
import {
  guessCheck,
  readStep,
  readWork,
  showWork,
} from '../../../../src/core/tree/writing/work.ts';
import { shippedShop } from '../../../helpers/library.ts';

const shop = shippedShop();
const causes = ['Fuse', 'Horn', 'Button'].map((name) => ({
  id: name.toLowerCase(),
  name,
  odds: 30,
}));
const three = ['full', 'low', 'dead'].map((label) => ({ id: label, label }));

const valueOf = (read: ReturnType<typeof readResults>) =>
  read.kind === 'good' ? read.value : read.problems[0]?.message;

test.each([
  ['whole, burnt through', { labels: ['whole', 'burnt through'] }],
  [
    'full 11.5 V low 2 V dead',
    { labels: ['full', 'low', 'dead'], bands: { limits: [11.5, 2], unit: 'V' } },
  ],
  [
    'full, 11,5V, low, 2, dead',
    { labels: ['full', 'low', 'dead'], bands: { limits: [11.5, 2], unit: 'V' } },
  ],
  [
    'good 0.2 volts too much',
    { labels: ['good', 'too much'], bands: { limits: [0.2], unit: 'V' } },
  ],
  ['turns freely, 2 turns and stops', { labels: ['turns freely', '2 turns and stops'] }],
  ['full 11.5 low 2 dead', 'In which unit are these limits?'],
  ['full 2 V low 11 V dead 5 V none', 'The limits go up and down.'],
  ['full 11 V low 2 ohm dead', 'The limits are in V and in ohm.'],
  ['good', 'That is one result; a check shows one of two or more.'],
  ['good, Good', '"good" stands there twice.'],
])('the results typed as "%s" are read', (line, wanted) => {
  expect(valueOf(readResults(line))).toEqual(wanted);
});

test.each([
  ['1 dead', { fuse: { dead: 'always' } }],
  [
    '1+3 dead mostly, 2 low 60 dead 30%',
    { fuse: { dead: 'mostly' }, button: { dead: 'mostly' }, horn: { low: 60, dead: 30 } },
  ],
  ['2 lo half', { horn: { low: 'half' } }],
  ['2 dead 12,5', { horn: { dead: 12.5 } }],
  ['none', {}],
])('the causes marked as "%s" are read', (line, wanted) => {
  expect(readMarks(line, { causes, results: three })).toEqual({ kind: 'good', value: wanted });
});

test.each([
  ['4 dead', 'There is no cause 4: they go from 1 to 3.'],
  ['1 mostly', 'Which of these does it show: low, dead?'],
  ['1 2', 'Is 2 in "1 2" a cause or a percent?'],
  ['fuse dead', '"fuse dead" does not begin with the number of a cause.'],
  ['1 gone', '"gone" is no result of this check, which are: full, low, dead.'],
  ['1 dead 80 low 40', 'Of a hundred vehicles, 120 are shared out.'],
  ['1 dead, 1 low', 'In "1 low" a cause comes a second time.'],
])('marks that say nothing, "%s", are told in one line', (line, message) => {
  expect(readMarks(line, { causes, results: three })).toMatchObject({ problems: [{ message }] });
});

test('the unit need not be typed where the question names it', () => {
  expect(valueOf(readResults('full 11,5 dead', 'V'))).toEqual({
    labels: ['full', 'dead'],
    bands: { limits: [11.5], unit: 'V' },
  });
});

test('with one bad result its name need not be said, and no word means always', () => {
  const results = three.slice(0, 2);

  expect(readMarks('1, 2+3 seldom', { causes, results })).toEqual({
    kind: 'good',
    value: { fuse: { low: 'always' }, horn: { low: 'seldom' }, button: { low: 'seldom' } },
  });
});

test('what the work takes is offered as a line that reads back as itself', () => {
  const shown = readResults('full 11.5 V low 2 V dead');
  const bands = shown.kind === 'good' ? shown.value.bands : undefined;
  if (bands === undefined) throw new Error('no bands');
  const guessed = guessCheck(
    'Volts at the horn',
    { results: three, reading: { ...bands, quantity: 'voltage' } },
    shop,
  );

  expect(showWork(guessed)).toBe(
    'measure, 5 min, battery connected, key run, engine off, tool dvm',
  );
  expect(readWork(showWork(guessed), guessed, shop)).toEqual({ kind: 'good', value: guessed });
  expect(readWork('8, engine fast idle', guessed, shop)).toMatchObject({
    value: { minutes: 8, standing: { engine: 'fast-idle' }, tools: ['dvm'] },
  });
});

test.each([
  ['key sideways', '"sideways" is no way the key can stand: off, acc, run, start.'],
  ['0 min', '0 minutes can hardly be meant.'],
  ['quickly', '"quickly" is nothing that the work takes.'],
  ['tool flux pump', 'No tool in the shop is called "flux pump".'],
])('work that cannot be, "%s", is told in one line', (line, message) => {
  const guessed = guessCheck('Is it whole?', { results: three }, shop);

  expect(readWork(line, guessed, shop)).toMatchObject({ problems: [{ message }] });
});

test('a step that no caution makes safe is refused as it is typed', () => {
  expect(readStep('Fit a bigger fuse and see if it holds.')).toMatchObject({
    problems: [{ message: expect.stringContaining('a bigger fuse') }],
  });
  expect(readStep('Never a bigger fuse.').kind).toBe('good');
});

test('ids are made from names, and never one twice or a word that rows use', () => {
  expect(idFor('Is the horn fuse whole?', [])).toBe('horn-fuse-whole');
  expect(idFor('Horn fuse whole', ['horn-fuse-whole'])).toBe('horn-fuse-whole-2');
  expect(idFor('always', [])).toBe('always-2');
  expect(idFor('Kühler', [])).toBe('kuhler');
});

test('back takes back the answer before it, and may come twice', () => {
  expect(standingAnswers(['one', 'two', 'back', 'three', 'back', ' Back '])).toEqual([]);
  expect(standingAnswers(['one', 'back', 'two'])).toEqual(['two']);
});

test('an empty line is no answer where nothing is offered', () => {
  const begun = nextQuestion([], shop);
  if (begun.kind === 'bad' || begun.value.kind !== 'asks') throw new Error('nothing is asked');

  expect(readAnswer(begun.value.question, '  ')).toMatchObject({
    problems: [{ code: 'not-understood' }],
  });
});

test('answers that are none any more, as after editing the file, are told with their line', () => {
  const told = [
    'The horn is silent',
    'Nothing sounds.',
    'Does the horn sound?',
    'Press it.',
    '',
    'yes',
  ];

  expect(nextQuestion(told, shop)).toMatchObject({
    problems: [{ line: 6, value: 'yes', code: 'not-understood' }],
  });
});
