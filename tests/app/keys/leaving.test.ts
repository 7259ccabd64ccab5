import { expect, test } from 'vitest';
import { isSpent } from '../../../src/app/keys/run.ts';
import { emptyState } from '../../../src/app/state.ts';
import { defaultSettings } from '../../../src/core/settings.ts';
import { stampAt } from '../../helpers/story.ts';

/** A key struck so many milliseconds after the same key did its one thing. */
function spentAfter(token: string, milliseconds: number): boolean {
  const before = stampAt(1);
  const now = { ...before, mono: before.mono + milliseconds };
  const run = { token, mono: before.mono, spent: true, letters: 0 };
  return isSpent({ ...emptyState(now, defaultSettings), run }, token);
}

test('Ctrl+C struck again gets out, and held down it goes on as one', () => {
  expect(spentAfter('C-c', 60)).toBe(true);
  expect(spentAfter('C-c', 400)).toBe(false);
});

test('any other key goes on with its run for longer than a keyboard waits to repeat', () => {
  expect(spentAfter('y', 1000)).toBe(true);
  expect(spentAfter('y', 2500)).toBe(false);
});
