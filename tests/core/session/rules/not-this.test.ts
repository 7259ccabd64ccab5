import { expect, test } from 'vitest';
import { eventWords } from '../../../../src/core/account/clauses/clauses.ts';
import { accountContext } from '../../../../src/core/account/context.ts';
import { complaintBlocks } from '../../../../src/core/account/opening/complaint.ts';
import { chancesNow } from '../../../../src/core/reason/history/belief-history.ts';
import { leftOut } from '../../../../src/core/reason/history/from-story.ts';
import { decisionsOf } from '../../../../src/core/review/decisions.ts';
import type { Action } from '../../../../src/core/session/action.ts';
import type { Story } from '../../../../src/core/session/story.ts';
import { lookAt, missedByLook } from '../../../../src/core/tree/looked.ts';
import { after, verdict } from '../../../helpers/story.ts';
import { smallTree } from '../../../helpers/tree.ts';

const named: readonly Action[] = [
  { do: 'find', check: 'lamp', result: 'dark' },
  { do: 'find', check: 'look', result: 'burnt' },
];
const denied: Action = { do: 'not-this', cause: 'fuse', acknowledged: true };

const odds = (story: Story, cause: string): number => {
  const chance = chancesNow(story)?.get(cause) ?? Number.NaN;
  return chance / (1 - chance);
};

test('an open look that found nothing counts as one look in ten that misses: 0.1 against 0.995', () => {
  const before = after(named).story;
  const { story } = after([...named, denied]);

  expect(odds(story, 'fuse') / odds(before, 'fuse')).toBeCloseTo(0.1 / 0.995, 9);
});

test('where a check of the tree looks at that very part, it counts as that check does', () => {
  const tree = smallTree();
  const { look } = tree.checks;
  const seen = look && {
    ...tree,
    checks: { ...tree.checks, look: { ...look, 'looks-at': ['fuse'] } },
  };

  expect(seen && missedByLook(seen, 'fuse')).toBe(0.05);
  expect(missedByLook(tree, 'fuse')).toBe(0.1);
});

test('looking twice tells no more than looking once', () => {
  const once = after([...named, denied]).story;
  const twice = after([...named, denied, denied]).story;

  expect(odds(twice, 'fuse')).toBeCloseTo(odds(once, 'fuse'), 12);
});

test('the way goes on to something else, and says why', () => {
  expect(after(named).story.due).toEqual({ kind: 'named', cause: 'fuse' });

  const { due } = after([...named, denied]).story;

  expect(due).toEqual({
    kind: 'exhausted',
    reason: 'The way names "Fuse burnt" again, which was looked at, and it was not that.',
  });
});

test('its repair is not advised, and no check is made of the look, until something points at it', () => {
  const ids = (actions: readonly Action[]) => leftOut(after(actions).story).map(({ id }) => id);

  expect(ids([...named, denied])).toEqual([lookAt('fuse'), 'fuse']);
  expect(ids([...named, denied, { do: 'find', check: 'look', result: 'burnt' }])).toEqual([
    lookAt('fuse'),
  ]);
});

test('a cause that was condemned can be looked at and denied', () => {
  const { story } = after([...named, { do: 'condemn', cause: 'fuse', acknowledged: true }, denied]);

  expect(story.due.kind).toBe('exhausted');
  const told = JSON.stringify(complaintBlocks(accountContext(story)));
  expect(told).toContain('No cause');
  expect(told).not.toContain('not mended yet');
});

test('it is told as a look, and the review charges nobody for it', () => {
  const { story, events, header } = after([...named, denied]);

  const last = story.entries.at(-1);
  expect(last && eventWords(story, last)).toBe('We looked at fuse burnt: it was not that.');
  expect(decisionsOf({ header, events }).at(-1)).toMatchObject({
    kind: 'look',
    charged: 0,
    step: { do: 'check', id: lookAt('fuse') },
  });
});

test('a cause that this tree does not have is refused, and a caution not read is told', () => {
  const { story } = after(named);

  expect(verdict(story, { do: 'not-this', cause: 'lamp' })).toBe('unknown-cause');
});

test('taken back by a correction it counts no more', () => {
  const { story, events } = after([...named, denied]);
  const n = events.at(-1)?.n ?? 0;
  const back = after([...named, denied, { do: 'correct', n, withdraw: true }]).story;

  expect(story.findings).toHaveLength(3);
  expect(back.findings).toHaveLength(2);
  expect(back.due).toEqual({ kind: 'named', cause: 'fuse' });
});
