import { expect, test } from 'vitest';
import { directionOf, peopleOf } from '../../../src/core/review/people.ts';
import { expectationsOf } from '../../../src/core/review/expectations.ts';
import { expectationWords } from '../../../src/core/review/lines.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { after } from '../../helpers/story.ts';
import { reviewed, reviewText } from '../../helpers/reviewed.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const guess: readonly Action[] = [dark, { do: 'repair', cause: 'wire', acknowledged: true }];
const sound: readonly Action[] = [
  dark,
  { do: 'find', check: 'look', result: 'burnt' },
  { do: 'repair', cause: 'fuse', acknowledged: true },
];
const one = { guess: reviewed(after(guess)), sound: reviewed(after(sound)) };
/** Jobs of one person, a month after the other. */
const jobs = (...kinds: readonly ('guess' | 'sound')[]) =>
  kinds.map((kind, index) => ({
    ...one[kind],
    review: { ...one[kind].review, opened: `2026-0${index + 1}-10T10:00:00+00:00` },
  }));

test.each([
  [[0, 0, 1, 1], 'too few'],
  // By hand: the slope of 0, 0.25, 0.5, 0.75, 1 is 0.25 with no rest.
  [[0, 0.25, 0.5, 0.75, 1], 'rising'],
  [[1, 1, 0.5, 0, 0], 'falling'],
  [[0, 1, 0, 1, 0], 'unclear'],
  [[1, 1, 1, 1, 1], 'unclear'],
] as const)('the direction of %j is %s', (values, direction) => {
  expect(directionOf(values)).toBe(direction);
});

test('a skill is added up by month and over all, with the spread of the jobs', () => {
  const [person, ...others] = peopleOf(
    jobs('sound', 'guess', 'sound')
      .map(({ review }) => review)
      .toReversed(),
  );
  const evidence = person?.trends.find(({ measure }) => measure === 'evidence');

  expect(others).toEqual([]);
  expect(person).toMatchObject({ who: 'JB', jobs: 3, months: ['2026-01', '2026-02', '2026-03'] });
  expect([...(evidence?.months ?? [])]).toEqual([
    ['2026-01', { part: 1, whole: 1 }],
    ['2026-02', { part: 0, whole: 1 }],
    ['2026-03', { part: 1, whole: 1 }],
  ]);
  expect(evidence).toMatchObject({
    all: { part: 2, whole: 3 },
    least: 0,
    most: 1,
    direction: 'too few',
  });
});

test('the table comes before the jobs, and few jobs show no direction', () => {
  const few = reviewText(...jobs('guess', 'sound'));
  const many = reviewText(...jobs('guess', 'guess', 'guess', 'sound', 'sound', 'sound'));

  expect(few).toContain('Fewer than five jobs show no direction.');
  expect(few.indexOf('## JB, over two jobs')).toBeLessThan(few.indexOf('## Orchard van'));
  expect(many).toMatch(/\| evidence before parts \|.*\| 3 of 6 \| 0 % to 100 % \(6\) \| rising \|/);
});

test('practice is never counted with jobs on real vehicles', () => {
  const practice = { ...one.guess.review, practice: true };

  expect(peopleOf([one.sound.review, one.sound.review, practice])[0]?.jobs).toBe(2);
  expect(peopleOf([practice, practice])[0]?.jobs).toBe(2);
});

test('a person with one job has no table', () => {
  expect(peopleOf([one.sound.review])).toEqual([]);
});

const expecting = (result: string): readonly Action[] => [
  dark,
  { do: 'expect', check: 'look', result },
  { do: 'find', check: 'look', result: 'burnt' },
];

test('expectations are counted beside how often the belief would have them come true', () => {
  const right = reviewed(after(expecting('burnt'))).review;
  const wrong = reviewed(after(expecting('whole'))).review;

  expect(right.expectations).toMatchObject({ said: 1, right: 1, weighed: 1 });
  expect(wrong.expectations).toMatchObject({ said: 1, right: 0, weighed: 1 });
  // The two results of the look are all that can come.
  expect(right.expectations.foreseen + wrong.expectations.foreseen).toBeCloseTo(1, 9);
  expect(right.talk.map(({ expected }) => expected).join(' ')).not.toContain('undefined');
});

test('from ten expectations on they are told by what the odds made of them', () => {
  const { decisions } = reviewed(after(expecting('burnt'))).review;
  const few = expectationsOf(decisions);
  const many = expectationsOf(Array.from({ length: 10 }, () => decisions).flat());

  expect(expectationWords('JB', few)).toEqual([
    'JB said what was expected once, and was right once; by the odds about 1 of 1 would have come so.',
  ]);
  expect(expectationWords('JB', many).join('')).toMatch(
    /^JB said what was expected ten times, and was right ten times; .*: where the odds favored it, right 10 of 10 times\.$/,
  );
  expect(expectationWords('JB', expectationsOf([]))).toEqual([]);
});
