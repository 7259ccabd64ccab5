import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { showMarkdown } from '../../../src/core/account/forms/markdown.ts';
import { reviewBlocks } from '../../../src/core/review/outline.ts';
import { trendBlocks, trendsOf } from '../../../src/core/review/trend.ts';
import { reviewOf } from '../../../src/core/review/review.ts';
import { refinedAdvice } from '../../../src/core/reason/advice/advise.ts';
import { inputFrom, leftOut } from '../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { readSession } from '../../../src/store/recover.ts';
import { parseGfm, rawOf, tablesOf } from '../../helpers/gfm.ts';
import { after } from '../../helpers/story.ts';

const folder = 'sessions/examples';
const names = readdirSync(folder).filter((name) => name.endsWith('.jsonl'));
const guessed = names.find((name) => name.endsWith('no-start.jsonl')) ?? '';

function example(name: string) {
  const read = readSession(readFileSync(join(folder, name)), name);
  if (read.kind === 'bad') throw new Error(`${name} cannot be read`);
  return read.value;
}

/** Enough to see that there is a figure; how right it is stands with the simulation's own tests. */
const few = { vehicles: 3 };

/** Each example is reviewed once: the advice on every decision of it takes seconds. */
const reviews = names.map((name) => reviewOf(name, example(name), few));
const theGuess = reviews[names.indexOf(guessed)]!;

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const whole: Action = { do: 'find', check: 'look', result: 'whole', acknowledged: true };
const dead: Action = { do: 'find', check: 'volts', reading: '0.2', acknowledged: true };
const mend = (cause: string): Action => ({ do: 'repair', cause, acknowledged: true });
const reviewed = (actions: readonly Action[]) => reviewOf('job', after(actions), few);

test('the best step of every decision is what the advice gives on the story before it', () => {
  const { header, events } = example(guessed);
  const decisions = theGuess.decisions.filter(({ kind }) => kind === 'free');

  expect(decisions.length).toBeGreaterThan(5);
  for (const { n, best, chosen } of decisions) {
    const index = events.findIndex((event) => event.n === n);
    const implied = events
      .slice(0, index)
      .findLastIndex(
        (event) =>
          event.kind !== 'check-begun' &&
          !((event.kind === 'standing' || event.kind === 'access') && event.implied === true),
      );
    const story = fold(header, events.slice(0, implied + 1));
    const made = inputFrom(story);
    if (made.kind === 'bad') throw new Error('no case');
    const advice = refinedAdvice(made.value, {
      leaveOut: leftOut(story),
      own: { do: chosen.do, id: chosen.id },
    });
    const first = advice.kind === 'good' ? advice.value.next[0] : undefined;
    expect([n, best?.id, best?.expectedLeft]).toEqual([n, first?.id, first?.expectedLeft]);
  }
});

test('a pump fitted on a guess is seen, priced, and named first among what to practise', () => {
  const review = theGuess;

  expect(review.guesses).toBe(1);
  expect(review.toldNothing).toBe(1);
  expect(review.habits.failedRepairs).toBe(1);
  expect(review.practise[0]).toContain('Fuel pump failed');
  expect(review.minutes.lost).toBeLessThan(review.minutes.used);
});

test('no step is charged more than it takes, and what is asked of everybody is free', () => {
  const { decisions } = theGuess;

  expect(decisions.filter(({ kind, lost }) => kind === 'asked' && lost > 0)).toEqual([]);
  expect(decisions.filter(({ lost }) => lost < 0 || lost > 80)).toEqual([]);
});

test('the dearest choice is told in sentences with the leader by name, the other steps together', () => {
  const text = showMarkdown(reviewBlocks([theGuess]));
  const [told = '', rest = ''] = text.split('### The other steps together');

  expect(told).toContain(
    'The step taken was "repair: Fuel pump failed", which then stood at 13 %.',
  );
  expect(told).toMatch(/At 10:35 the [a-z ]+ led with 15 %, before 24 other suspects\./);
  // By hand: nothing goes through the job step by step, in a table or in a list of grades.
  expect(rest).not.toMatch(/\d\d:\d\d/);
  expect(text).not.toContain('Best then');
  expect(tablesOf(parseGfm(text))).toEqual([]);
});

test('the other steps are counted by what is to be said of them, each once', () => {
  const text = showMarkdown(reviewBlocks([theGuess]));
  const [, rest = ''] = text.split('### The other steps together');
  const [sentence = ''] = rest.trim().split('\n');
  const counted = [...sentence.matchAll(/(\w+) (?:was|were) /g)].map(([, word = '']) => word);
  const numbers = ['', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'];
  const sum = counted.reduce((all, word) => all + numbers.indexOf(word.toLowerCase()), 0);
  const tellings = text.match(/The step taken was/g) ?? [];

  expect(counted.length).toBeGreaterThan(1);
  expect(sum).toBe(theGuess.decisions.length - tellings.length);
});

test('a guess that cured is luck, a sound choice that failed is not a fault', () => {
  const lucky = reviewed([dark, mend('wire'), { do: 'prove', result: 'lit', acknowledged: true }]);
  const sound = reviewed([
    dark,
    whole,
    dead,
    mend('wire'),
    { do: 'prove', result: 'dark', acknowledged: true },
  ]);

  expect(lucky.luck.map(({ kind }) => kind)).toEqual(['lucky guess']);
  expect(sound.luck.map(({ kind }) => kind)).toEqual(['sound choice that failed']);
  expect(lucky.practise.join(' ')).toContain('Look before replacing');
  expect(sound.practise.join(' ')).not.toContain('Look before replacing');
});

test('cautions passed over come before everything else to practise', () => {
  const review = reviewed([dark, whole, { do: 'find', check: 'volts', reading: '0.2' }]);

  expect(review.habits.cautionsPassedOver).toEqual(['Spark']);
  expect(review.practise[0]).toContain('Read the cautions before the step');
});

test('a second repair before the proof of the first is two changes at once', () => {
  const { habits } = reviewed([dark, mend('fuse'), mend('wire')]);

  expect(habits.changesAtOnce).toBe(1);
  expect(habits.unprovenRepairs).toBe(2);
});

test('a part off before the complaint was seen is a search begun too early', () => {
  expect(reviewed([{ do: 'part-off', part: 'lens' }, dark]).habits.confirmedFirst).toBe(false);
  expect(reviewed([dark, { do: 'part-off', part: 'lens' }]).habits.confirmedFirst).toBe(true);
});

test('the same check again with nothing changed could tell nothing', () => {
  const { habits, toldNothing } = reviewed([dark, whole, whole]);

  expect(habits.repeats).toBe(1);
  expect(toldNothing).toBe(1);
});

test('several sessions of one person make a trend, in their order of time', () => {
  const [trend, ...others] = trendsOf(reviews.toReversed());

  expect(others).toEqual([]);
  expect(trend?.who).toBe('JB');
  expect(trend?.sessions.map(({ guesses }) => guesses)).toEqual([1, 0, 0, 0, 0]);
});

/** Two sessions of one person, the second a day later. */
const twoDays = (first: object, last: object) => [
  { ...theGuess, opened: '2026-04-11T10:00:00+00:00', ...first },
  { ...theGuess, opened: '2026-04-12T10:00:00+00:00', ...last },
];

const minutes = (advised: number | undefined, lost: number) => ({
  minutes: { ...theGuess.minutes, used: 60, advised, lost },
});

test('a trend tells what the choices cost against the advised order, first and last', () => {
  const text = showMarkdown(
    trendBlocks(twoDays({ ...minutes(40, 20), guesses: 2 }, { ...minutes(50, 5), guesses: 0 })),
  );

  expect(text).toContain('The trend of JB');
  // (40 + 20) / 40 and (50 + 5) / 50, by hand.
  expect(text).toContain('choices cost 1.50 times');
  expect(text).toContain('1.10 times at last; guesses went from 2 to 0.');
  expect(text).toContain('That is the right way. So few sessions show a direction, not a habit.');
});

test('a trend without an advised order tells the minutes given away, and praises nothing worse', () => {
  const days = twoDays({ ...minutes(undefined, 5), who: '' }, { ...minutes(0, 20), who: '' });
  const text = showMarkdown(trendBlocks(days));

  expect(text).toMatch(/The trend\n/);
  expect(text).toContain('| unknown |');
  expect(text).toContain('minutes given away went from 5 minutes to 20 minutes');
  expect(text).toContain('guesses stayed at 1');
  expect(text).not.toContain('That is the right way');
});

test('four sessions are enough not to be called few', () => {
  const four = [1, 2, 3, 4].map((day) => ({
    ...theGuess,
    opened: `2026-04-1${day}T10:00:00+00:00`,
  }));

  expect(showMarkdown(trendBlocks(four))).not.toContain('So few sessions');
});

test('the words on the minutes follow how the job ended', () => {
  const told = (change: object) =>
    showMarkdown(reviewBlocks([{ ...theGuess, closed: 'fixed', ...change }]));

  expect(told(minutes(40, 20))).toContain('that is what was to be expected');
  expect(told(minutes(30, 20))).toContain('the other 10 minutes over what was to be expected');
  expect(told(minutes(55, 20))).toContain('still ended 15 minutes sooner');
  expect(told({ ...minutes(30, 20), closed: 'left' })).toContain('without a proven repair');
  expect(told(minutes(undefined, 0))).toContain('60 minutes were used');
});

test('a review of nothing says that there was nothing', () => {
  const text = showMarkdown(reviewBlocks([{ ...theGuess, who: '', strengths: [], decisions: [] }]));

  expect(text).toContain('No step is on record.');
  expect(text).toContain('Nothing that could be counted.');
  expect(text).not.toContain(', by ');
});

test('the review is whole markdown, and has no marks in it', () => {
  const text = showMarkdown(reviewBlocks([theGuess]));
  const tree = parseGfm(text);

  expect(rawOf(tree)).toEqual([]);
  for (const rows of tablesOf(tree)) expect(new Set(rows).size).toBe(1);
  expect(text).not.toMatch(/score|points out of|\/10|undefined|NaN|\b1 (checks|steps)\b/);
  expect(text).toContain('Two things to practise');
});

test('contradictions are named with what was said of them, and whether they were repeated', () => {
  const look = (result: string): Action => ({ do: 'find', check: 'look', result });
  const worse = [dark, look('whole'), look('burnt')];
  const misread: Action = { do: 'settle', as: 'misread-then' };
  const words = (actions: readonly Action[]): string =>
    JSON.stringify(reviewBlocks([reviewed(actions)]));

  expect(reviewed(worse).habits).toMatchObject({ contradictions: 1, doubtful: 1, settled: [] });
  expect(words([...worse, misread])).toContain('One doubtful finding was not repeated');
  expect(words([...worse, misread])).toContain('the first was taken for a misreading');
  const again = reviewed([...worse, misread, look('burnt')]);
  expect(again.habits).toMatchObject({ contradictions: 0, doubtfulRepeated: 1, corrections: 0 });
});
