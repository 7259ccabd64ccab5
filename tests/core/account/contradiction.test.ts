import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { after } from '../../helpers/story.ts';

const record = { events: 9, passedOver: 0, link: 'ab'.repeat(32) };
const told = (actions: readonly Action[]): string => writeUp(after(actions).story, record).markdown;

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const whole: Action = { do: 'find', check: 'look', result: 'whole' };
const dead: Action = { do: 'find', check: 'volts', reading: '0.2' };
const mend = (text = 'spliced'): Action => ({ do: 'repair', cause: 'wire', text });
const burnt: Action = { do: 'find', check: 'look', result: 'burnt' };
const gotWorse: readonly Action[] = [dark, whole, mend(), { do: 'prove', result: 'dark' }, burnt];

test.each([
  ['misread-then', 'The first was taken for a misreading and did not count from then on.'],
  ['misread-now', 'The last was taken for a misreading and did not count.'],
  [
    'comes-and-goes',
    'The difference was put down to something that comes and goes; each counted by itself.',
  ],
  [
    'new-since',
    'The difference was put down to something new since the repair; what the check had shown',
  ],
] as const)('a contradiction is told where it happened, with its answer: %s', (as, words) => {
  const text = told([...gotWorse, { do: 'settle', as }, dead]);

  expect(text).toMatch(
    /did not agree: first whole at 10:0\d, then burnt at 10:\d\d, with a repair between\./,
  );
  expect(text).toContain(words);
  expect(text.indexOf(words)).toBeLessThan(text.indexOf('0.2 V'));
  expect(text.includes('it was taken for a misreading')).toBe(as.startsWith('misread'));
  expect(text.includes('does not count any more')).toBe(as === 'new-since');
});

test('a contradiction that nobody has said anything of is told as open', () => {
  const text = told(gotWorse);

  expect(text).toMatch(
    /The same check had been better before: whole at 10:0\d, with a repair between\. Nobody said which/,
  );
  expect(text).toContain('set aside for the worse one after it');
});
