import { expect, test } from 'vitest';
import { showMarkdown } from '../../../src/core/account/forms/markdown.ts';
import { givenAway, isGuess } from '../../../src/core/review/decision.ts';
import { reviewBlocks } from '../../../src/core/review/outline.ts';
import { refinedAdvice } from '../../../src/core/reason/advice/advise.ts';
import { inputFrom, leftOut } from '../../../src/core/reason/history/from-story.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { parseGfm, rawOf } from '../../helpers/gfm.ts';
import { exampleNamed, exampleNames, reviewed, reviewText } from '../../helpers/reviewed.ts';
import { after } from '../../helpers/story.ts';

/** Each example is reviewed once: the advice on every decision of it takes seconds. */
const all = exampleNames.map((name) => reviewed(exampleNamed(name.replace('.jsonl', ''))));
const guessed = all.find(({ review }) => review.guesses > 0)!;
const led = all.find(({ review }) => review.opened.startsWith('2026-05-02'))!;

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const look = (result: string): Action => ({ do: 'find', check: 'look', result });
const mend = (cause: string): Action => ({ do: 'repair', cause, acknowledged: true });
const lit: Action = { do: 'prove', result: 'lit', acknowledged: true };
const job = (...actions: readonly Action[]) => reviewed(after(actions)).review;

test('a pump fitted on a guess is named, charged no more than its minutes, and asked about', () => {
  const { review } = guessed;
  const [guess, ...others] = review.decisions.filter(isGuess);

  expect(others).toEqual([]);
  expect(guess?.step).toEqual({ do: 'repair', id: 'fuel-pump' });
  expect(guess?.charged).toBeLessThanOrEqual(Math.min(guess?.planned ?? 0, guess?.taken ?? 0));
  expect(guess?.charged).toBeGreaterThan(30);
  expect(guess?.better?.step.do).toBe('check');
});

test('a guess is told with who was suspected, what comes before it, and a question', () => {
  const { review } = guessed;
  const told = review.talk.find(({ title }) => title.endsWith('a repair on a guess'));

  expect(told?.known).toMatch(
    /^At 10:35 the fuel in the tank \(\d+ %\) came first, then the points/,
  );
  expect(told?.better).toMatch(
    /^Better then: the spark at .* before anything is mended on a guess/,
  );
  expect(told?.ask).toContain('what would have changed your mind?');
});

test('what is charged is one number wherever it stands', () => {
  for (const { review, story } of all) {
    const given = givenAway(review.decisions);
    expect(review.minutes.givenAway).toBe(given);
    expect(review.people.reduce((sum, one) => sum + one.givenAway, 0)).toBe(given);
    expect(given).toBeLessThanOrEqual(story.minutes);
  }
  expect(reviewText(guessed)).toContain(`; ${guessed.review.minutes.givenAway} minutes given away`);
});

test('who only did what stood on screen is charged nothing, and is told so', () => {
  const { decisions } = led.review;

  expect(decisions.filter(({ kind }) => kind === 'followed').length).toBeGreaterThan(1);
  expect(decisions.filter(({ kind, charged }) => kind !== 'chosen' && charged > 0)).toEqual([]);
  expect(led.review.minutes.givenAway).toBe(0);
  expect(reviewText(led)).toContain('It was what the screen led to: nobody is charged for that.');
});

test('the better step of a free choice is the first of the advice at that place', () => {
  const recorded = exampleNamed('no-start');
  const squirt = guessed.review.decisions.find(
    ({ step, charged }) => step.id === 'throat-squirt' && charged > 0,
  );
  const index = recorded.events.findIndex(({ n }) => n === squirt?.n);
  const begun = recorded.events
    .slice(0, index)
    .findLastIndex((event) => event.kind !== 'check-begun' && !('implied' in event));
  const story = fold(recorded.header, recorded.events.slice(0, begun + 1));
  const made = inputFrom(story);
  if (made.kind === 'bad') throw new Error('no case');
  const advice = refinedAdvice(made.value, { leaveOut: leftOut(story) });

  expect(squirt?.better?.step.id).toBe(advice.kind === 'good' ? advice.value.next[0]?.id : '');
});

test('looking twice at what few would have shown is praised, and so is a look at what leads', () => {
  const again = guessed.review.decisions.filter(({ kind }) => kind === 'verified');
  const points = guessed.review.decisions.find(({ step }) => step.id === 'points-look');

  expect(again.map(({ step, charged }) => [step.id, charged])).toEqual([['throat-squirt', 0]]);
  // The same again was to be expected: by the rows alone a strong squirt would be foretold once more.
  expect(again[0]?.foreseen.size).toBe(0);
  expect(points).toMatchObject({ kind: 'look', charged: 0 });
});

test('the same check again with nothing changed and nothing doubtful could tell nothing', () => {
  const { decisions } = job(dark, look('whole'), look('whole'));
  const other = job(dark, look('whole'), look('burnt')).decisions.at(-1);

  expect(decisions.at(-1)).toMatchObject({ kind: 'chosen', tellsNothing: true });
  expect(decisions.at(-1)?.charged).toBeLessThanOrEqual(1);
  expect(other).toMatchObject({ kind: 'verified', charged: 0 });
});

test('a check that was never to be had is not held against anybody', () => {
  const skip: Action = { do: 'skip', check: 'look', reason: 'no light' };
  const blamed = job(dark, mend('fuse'), lit).decisions.find(({ step }) => step.do === 'repair');
  const excused = job(dark, skip, mend('fuse'), lit).decisions;

  expect(blamed?.better?.step.id).toBe('look');
  expect(excused.find(({ step }) => step.do === 'repair')?.better?.step.id).not.toBe('look');
  expect(excused.find(({ kind }) => kind === 'passed')).toMatchObject({ reason: 'no light' });
});

test('a slip that was taken back is no decision; a misread one is', () => {
  const slip = job(dark, look('burnt'), { do: 'take-back' }, look('whole'));
  const misread = job(dark, look('whole'), look('burnt'), { do: 'settle', as: 'misread-now' });

  expect(slip.decisions.map(({ step }) => step.id)).toEqual(['lamp', 'look']);
  expect(misread.decisions.map(({ step }) => step.id)).toEqual(['lamp', 'look', 'look']);
});

test('only what was known then counts: a later finding changes no decision before it', () => {
  const recorded = after([dark, mend('fuse'), lit]);
  const later = after([dark, mend('fuse'), lit, { do: 'note', text: 'it was the wire' }]);
  const words = (one: typeof recorded) =>
    JSON.stringify(
      reviewed(one).review.decisions.map(({ before, better, charged }) => [
        [...(before ?? [])],
        better,
        charged,
      ]),
    );

  expect(words(later)).toBe(words(recorded));
});

test('there are three decisions to talk about at most, each with its time, in their order', () => {
  for (const { review } of all) {
    const numbers = review.talk.map(({ n }) => n);
    expect(numbers.length).toBeLessThanOrEqual(3);
    expect(numbers).toEqual(numbers.toSorted((one, other) => one - other));
    expect(review.talk.every(({ title }) => /^\d\d:\d\d, /.test(title))).toBe(true);
  }
  expect(guessed.review.talk.length).toBe(3);
});

test('a comparison is made only for the proven cause, in fives and with its spread', () => {
  const proven = reviewed(exampleNamed('rough-idle'), 5);
  const handedOn = reviewed(exampleNamed('charging'), 5);

  expect(proven.review.minutes.comparison?.causes).toEqual(['vac-hose']);
  expect(reviewText(proven)).toMatch(
    /With this fault \(the vacuum hose\) the advised way takes about .*[05] (min|minutes) .*and the tree's own way about .*; this job took 55 minutes\./,
  );
  expect(handedOn.review.minutes.comparison).toBeUndefined();
});

test('the review is whole markdown, says nothing undefined, and goes through nothing move by move', () => {
  const text = showMarkdown(reviewBlocks(all));

  expect(rawOf(parseGfm(text))).toEqual([]);
  expect(text).not.toMatch(/score|points out of|\/10|undefined|NaN|\b1 (checks|steps|minutes)\b/);
  expect(text.split('## How to read this').length).toBe(2);
});

test('a review of nothing says that there was nothing', () => {
  const text = reviewText(reviewed(after([])));

  expect(text).toContain('No step is on record.');
  expect(text).not.toContain('Of the other steps');
});
