import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { exampleNamed, reviewed, reviewText } from '../../helpers/reviewed.ts';

test('a job without a tree is reviewed by its skills alone: no choice is weighed', () => {
  const one = reviewed(exampleNamed('wipers-stop-half-way'), 5);
  const words = reviewText(one);

  expect(one.review.minutes).toMatchObject({ givenAway: 0, comparison: undefined });
  expect(one.review.decisions.every(({ charged, before }) => charged === 0 && !before)).toBe(true);
  expect(words).toContain('one change at a time 1 of 1');
  expect(words).toContain('chosen without odds to weigh them by');
  expect(words).not.toMatch(/given away|nothing explained|\d %/);
});

test('its account tells no chances, and says why', () => {
  const example = 'sessions/examples/2026-10-03-1310-orchard-van-own-wipers-stop-half-way.md';
  const account = readFileSync(example, 'utf8');

  expect(account).toContain('nobody gave odds');
  expect(account).not.toMatch(/It then stood at|suspects were weighed|told of the suspects/);
});
