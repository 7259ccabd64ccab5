import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { showMarkdown } from '../../../src/core/account/forms/markdown.ts';
import { reviewBlocks } from '../../../src/core/review/outline.ts';
import { reviewOf } from '../../../src/core/review/review.ts';
import { readSession } from '../../../src/store/recover.ts';

const example = 'sessions/examples/2026-10-03-1310-orchard-van-own-wipers-stop-half-way.jsonl';

test('a job without a tree is reviewed by its habits alone: no choice is weighed', () => {
  const read = readSession(readFileSync(example), example);
  if (read.kind === 'bad') throw new Error('the example cannot be read');
  const review = reviewOf('wipers', read.value, { vehicles: 5 });
  const words = showMarkdown(reviewBlocks([review]));

  expect(review.minutes).toMatchObject({ advised: undefined, ownOrder: undefined, lost: 0 });
  expect(words).toContain('No tree was about the complaint');
  expect(words).toContain("Every repair was put to the proof by the complaint's own test.");
  expect(words).toContain('Nobody gave odds, so no choice can be weighed against another.');
  expect(words).not.toContain('as good as');
});

test('its account tells no chances, and says why', () => {
  const account = readFileSync(example.replace('.jsonl', '.md'), 'utf8');

  expect(account).toContain('nobody gave odds');
  expect(account).not.toMatch(/It then stood at|suspects were weighed|told of the suspects/);
});
