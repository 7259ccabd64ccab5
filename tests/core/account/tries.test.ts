import { expect, test } from 'vitest';
import { writeUp } from '../../../src/core/account/account.ts';
import type { Action } from '../../../src/core/session/action.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallTree } from '../../helpers/tree.ts';

const repaired: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'repair', cause: 'fuse' },
];
const good: Action = { do: 'prove', result: 'lit' };

/** The account of a complaint that comes and goes, after so many good tries of the two asked for. */
function accountAfter(tries: number): string {
  const small = smallTree();
  const tree = { ...small, complaint: { ...small.complaint, tries: 2 } };
  const { story } = after(
    [...repaired, ...Array.from({ length: tries }, () => good)],
    headerFor(tree),
  );
  return writeUp(story, { events: 1, passedOver: 0, link: 'ab' }).markdown.replaceAll('\\', '');
}

test('one good try of several asked for is told as that, and as no proof', () => {
  const text = accountAfter(1);

  expect(text).toContain('shown good 1 of the 2 times in a row that are asked for');
  expect(text).toContain('The complaint did not show.');
  expect(text).not.toMatch(/Proved by the complaint's own test|The complaint was gone/);
});

test('with all of them it is proven', () => {
  expect(accountAfter(2)).toContain("Proved by the complaint's own test:");
  expect(accountAfter(2)).toContain(', 2 times in a row.');
});
