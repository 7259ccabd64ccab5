import { expect, test } from 'vitest';
import { healthyWords, lastWords, preparationWords, standardWords } from '../../src/app/wording.ts';
import { after } from '../helpers/story.ts';

const { story } = after([]);
const leg = story.legs[0]!;

test('before the first finding it is said that there is none', () => {
  expect(lastWords(story)).toBe('nothing found yet');
});

test('the last finding is told with what it was an answer to', () => {
  const told = lastWords(
    after([{ do: 'find', check: 'lamp', result: 'dark', acknowledged: true }]).story,
  );
  const { ask } = leg.tree.checks['lamp']!;

  expect(told.startsWith(`${ask.replace(/[?.:]$/, '')}: `)).toBe(true);
});

test('an access that the shop does not know is named by its own word', () => {
  expect(preparationWords({ kind: 'open', access: 'no-such-lid' }, leg.shop)).toBe(
    'Open: no-such-lid',
  );
});

test('without words of its own a check is healthy as its first result says', () => {
  const { healthy: _, ...check } = leg.tree.checks['lamp']!;

  expect(healthyWords(check)).toBe(check.results[0]?.label);
  expect(healthyWords({ ...check, healthy: 'bright and steady' })).toBe('bright and steady');
});

test('a reading that stands as it was taken is not told a second time', () => {
  expect(standardWords(undefined)).toBe('');
});
