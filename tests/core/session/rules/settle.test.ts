import { expect, test } from 'vitest';
import type { Action } from '../../../../src/core/session/action.ts';
import { contradictions, openQuestions } from '../../../../src/core/session/contradiction.ts';
import { awaitsProof, isProven } from '../../../../src/core/session/proof.ts';
import { after, verdict } from '../../../helpers/story.ts';

const find = (check: string, result: string): Action => ({ do: 'find', check, result });
const mended: readonly Action[] = [
  { do: 'repair', cause: 'wire' },
  { do: 'prove', result: 'dark' },
];
const worse = [find('look', 'whole'), find('look', 'burnt')];
const worseAfter = [find('lamp', 'dark'), find('look', 'whole'), ...mended, find('look', 'burnt')];
const settle = (as: Extract<Action, { do: 'settle' }>['as'], n?: number): Action => ({
  do: 'settle',
  as,
  ...(n !== undefined && { n }),
});

test('what may be said: new since a repair only where there was one', () => {
  expect(openQuestions(after(worse).story)).toEqual([
    {
      check: 'look',
      earlier: 1,
      later: 2,
      repairsBetween: 0,
      answers: ['misread-then', 'misread-now', 'comes-and-goes'],
    },
  ]);
  expect(verdict(after(worse).story, settle('new-since'))).toBe('no-repair-between');
  expect(verdict(after(worseAfter).story, settle('new-since'))).toBe('accepted');
});

test('nothing is settled that is not open', () => {
  expect(verdict(after([find('look', 'whole')]).story, settle('misread-now'))).toBe(
    'no-contradiction',
  );
  expect(verdict(after(worse).story, settle('misread-now', 1))).toBe('no-contradiction');
  expect(verdict(after(worse).story, settle('misread-now', 2))).toBe('accepted');
  const done = after([...worse, settle('comes-and-goes')]).story;
  expect(verdict(done, settle('comes-and-goes'))).toBe('no-contradiction');
});

test.each([
  ['misread-then', ['burnt']],
  ['misread-now', ['whole']],
  ['comes-and-goes', ['whole', 'burnt']],
] as const)('%s leaves these findings', (as, left) => {
  const { story } = after([...worse, settle(as)]);

  expect(story.findings.map(({ result }) => result)).toEqual(left);
  expect(story.settled).toMatchObject([{ as, check: 'look', earlier: 1, later: 2 }]);
  expect(contradictions(story)).toEqual([]);
  // What was written stays written, and says by which event it was withdrawn.
  expect(story.entries.filter(({ event }) => event.kind === 'found')).toHaveLength(2);
});

test('an older finding that contradicts what is left is asked about next', () => {
  const { story } = after([find('look', 'whole'), ...worse, settle('misread-then')]);

  expect(contradictions(story).map(({ earlier, later }) => [earlier.n, later.n])).toEqual([[1, 3]]);
});

test('what comes and goes contradicts nothing any more', () => {
  const again = [find('look', 'whole'), find('look', 'burnt')];
  const { story } = after([...worse, settle('comes-and-goes'), ...again]);

  expect(contradictions(story)).toEqual([]);
});

test('new since the repair: the fault that came with it can be condemned, repaired and taken back', () => {
  const { story, events } = after([...worseAfter, settle('new-since')]);
  const { n = 0 } = events.at(-1) ?? {};
  const fault = 'brought-by-repair-1';
  const back = after([...worseAfter, settle('new-since'), { do: 'correct', n, withdraw: true }]);

  expect(story.legs[0]?.tree.causes[fault]?.repair.standing).toEqual({ battery: 'disconnected' });
  expect(verdict(story, { do: 'repair', cause: fault })).toBe('accepted');
  expect(verdict(back.story, { do: 'repair', cause: fault })).toBe('unknown-cause');
  expect(contradictions(back.story)).toHaveLength(1);
});

test('a proof that was misread is no proof: it is due again', () => {
  const gone: readonly Action[] = [
    find('lamp', 'dark'),
    { do: 'repair', cause: 'wire' },
    { do: 'prove', result: 'lit' },
    find('lamp', 'dark'),
    settle('misread-then'),
  ];
  const { story } = after(gone);

  expect(story.proofs).toEqual([]);
  expect(isProven(story)).toBe(false);
  expect(awaitsProof(story)).toBe(true);
});
