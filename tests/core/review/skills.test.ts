import { expect, test } from 'vitest';
import { exampleNamed, reviewed, reviewText } from '../../helpers/reviewed.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { after } from '../../helpers/story.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const look = (result: string): Action => ({ do: 'find', check: 'look', result });
const mend = (cause: string): Action => ({ do: 'repair', cause, acknowledged: true });
const still: Action = { do: 'prove', result: 'dark', acknowledged: true };
const skills = (...actions: readonly Action[]) => reviewed(after(actions)).review.skills;

test('a second repair before the proof of the first is not one change at a time', () => {
  expect(skills(dark, mend('fuse'), mend('wire'), still)['one-change']).toEqual({ good: 1, of: 2 });
  expect(skills(dark, mend('fuse'), still, mend('wire'), still)['one-change']).toEqual({
    good: 2,
    of: 2,
  });
});

test('evidence before parts: a repair on a guess is none, one that the tree led to is', () => {
  expect(skills(dark, mend('wire')).evidence).toEqual({ good: 0, of: 1 });
  expect(skills(dark, look('burnt'), mend('fuse')).evidence).toEqual({ good: 1, of: 1 });
});

test('cautions that can maim count by the steps that have them', () => {
  const volts: Action = { do: 'find', check: 'volts', reading: '0.2' };

  expect(skills(dark, look('whole'), volts).cautions).toEqual({ good: 0, of: 1 });
  expect(skills(dark, look('whole'), { ...volts, acknowledged: true }).cautions).toEqual({
    good: 1,
    of: 1,
  });
});

test('what is left off counts once the job is closed, and only where something was taken off', () => {
  const off: Action = { do: 'part-off', part: 'lens' };
  const close: Action = { do: 'close', as: 'given-up' };

  expect(skills(dark, off)['put-back'].of).toBe(0);
  expect(skills(dark, close)['put-back'].of).toBe(0);
  expect(skills(dark, off, close)['put-back']).toEqual({ good: 0, of: 1 });
  expect(skills(dark, off, { do: 'part-on', part: 'lens' }, close)['put-back'].good).toBe(1);
});

test('doubtful findings count, and those that were looked at again', () => {
  const misread: Action = { do: 'settle', as: 'misread-then' };

  expect(skills(dark, look('whole'), look('burnt')).doubtful).toEqual({ good: 0, of: 1 });
  expect(skills(dark, look('whole'), look('burnt'), misread, look('burnt')).doubtful).toEqual({
    good: 1,
    of: 1,
  });
});

test('two people on one job are told apart, each by the steps made while they worked', () => {
  const weekend = reviewed(exampleNamed('2026-06-13-1310-orchard-van-no-supply'));
  const { people, decisions } = weekend.review;

  expect(people.map(({ who }) => who)).toEqual(['JB', 'MK']);
  expect(people.reduce((sum, { steps }) => sum + steps, 0)).toBe(decisions.length);
  for (const { who, steps } of people)
    expect(decisions.filter((one) => one.who === who).length).toBe(steps);
  expect(reviewText(weekend)).toContain('by JB and MK');
});

test('planned minutes stand beside those that were taken, of what was done', () => {
  const { minutes } = reviewed(exampleNamed('rough-idle')).review.skills;

  expect(minutes.planned).toBeGreaterThan(30);
  expect(minutes.taken).toBeGreaterThan(minutes.planned / 2);
});

test('something mended before the complaint was seen is told', () => {
  expect(reviewText(reviewed(after([{ do: 'part-off', part: 'lens' }, dark])))).toContain(
    'before the complaint was made to show itself',
  );
  expect(reviewText(reviewed(after([dark, { do: 'part-off', part: 'lens' }])))).not.toContain(
    'before the complaint was made to show itself',
  );
});
