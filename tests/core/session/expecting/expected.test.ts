import { expect, test } from 'vitest';
import { chancesNow } from '../../../../src/core/reason/history/belief-history.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import { expectedNow, isAsExpected } from '../../../../src/core/session/expecting/expected.ts';
import { after, verdict } from '../../../helpers/story.ts';

const dark: Action = { do: 'find', check: 'lamp', result: 'dark', acknowledged: true };
const whole: Action = { do: 'expect', check: 'look', result: 'whole' };
const look = (result: string): Action => ({ do: 'find', check: 'look', result });

test('what is expected of a check stands until it is answered, and is said once', () => {
  const { story } = after([dark, whole]);
  const answered = after([dark, whole, look('burnt')]).story;

  expect(expectedNow(story, 'look')).toMatchObject({ check: 'look', result: 'whole' });
  expect(verdict(story, { do: 'expect', check: 'look', result: 'burnt' })).toBe('expected-already');
  expect(expectedNow(answered, 'look')).toBeUndefined();
  expect(verdict(answered, whole)).toBe('accepted');
});

test('an answer between two results is as expected where either of them was', () => {
  expect(isAsExpected({ result: 'full', orResult: 'low' }, { result: 'low' })).toBe(true);
  expect(isAsExpected({ result: 'full', orResult: 'low' }, { result: 'none' })).toBe(false);
});

test('it moves no suspect and no step, and can be taken back', () => {
  const before = after([dark]).story;
  const { story } = after([dark, whole]);
  const back = after([dark, whole, { do: 'take-back' }]).story;

  expect(chancesNow(story)).toEqual(chancesNow(before));
  expect(story.due).toEqual(before.due);
  expect(back.expected).toEqual([]);
});

test.each([
  ['expect', 'nothing', 'unknown-check'],
  ['look', 'melted', 'unknown-result'],
])('of %s it cannot be expected: %s', (check, result, code) => {
  expect(verdict(after([dark]).story, { do: 'expect', check, result })).toBe(code);
});
