import { expect, test } from 'vitest';
import type { Action } from '../../../src/core/session/action.ts';
import {
  complaintsOf,
  isProvenGone,
  leftComplaints,
} from '../../../src/core/session/complaints.ts';
import { fold } from '../../../src/core/session/fold.ts';
import { withoutNames } from '../../../src/core/account/words/names.ts';
import { leftLines } from '../../../src/core/session/rules/left-open.ts';
import { decide } from '../../../src/core/session/rules/rules.ts';
import type { World } from '../../../src/core/session/rules/ruling.ts';
import { workerAt, type Story } from '../../../src/core/session/story.ts';
import { after, headerFor } from '../../helpers/story.ts';
import { smallShop, smallTree } from '../../helpers/tree.ts';

const other = { ...smallTree(), id: 'other', title: 'The other lamp' };
const trees = [smallTree(), other];
const world: World = {
  tree: (id) => {
    const tree = trees.find((one) => one.id === id);
    return tree && { tree, shop: smallShop };
  },
};

const dark: Action = { do: 'find', check: 'lamp', result: 'dark' };
const fuse: Action = { do: 'repair', cause: 'fuse' };
const good: Action = { do: 'prove', result: 'lit' };
const second: Action = { do: 'complaint', tree: 'other', words: ' it flickers ' };
const back: Action = { do: 'complaint', tree: 'no-light' };

const story = (...actions: readonly Action[]) => after(actions, headerFor(), world).story;
const refused = (of: Story, action: Action) => {
  const decision = decide(of, action, world);
  return decision.kind === 'refused' ? decision.problem.code : 'accepted';
};

const told = (...actions: readonly Action[]) =>
  complaintsOf(story(...actions)).map(({ legs, title, said }) => ({ legs, title, said }));

test('a second complaint is one of its own, in the words of its owner', () => {
  expect(told(dark, second)).toEqual([
    { legs: [0], title: 'No light', said: undefined },
    { legs: [1], title: 'The other lamp', said: 'it flickers' },
  ]);
});

test('where a tree leads on it is the same complaint still', () => {
  expect(told(dark, { do: 'leg', tree: 'other' })).toEqual([
    { legs: [0, 1], title: 'No light', said: undefined },
  ]);
});

test('what is gone back to is the complaint it was', () => {
  expect(told(dark, second, back).map(({ legs }) => legs)).toEqual([[0, 2], [1]]);
});

test('an old record that goes on after a proof has another complaint there', () => {
  const proven = [dark, fuse, good, { do: 'leg', tree: 'other' }] as const;

  expect(told(...proven).map(({ legs }) => legs)).toEqual([[0], [1]]);
});

test('each complaint is proven by its own test alone', () => {
  const first = story(dark, fuse, good, second);
  const both = story(dark, fuse, good, second, dark, fuse, good);
  const proven = (of: typeof first) => complaintsOf(of).map((one) => isProvenGone(of, one));

  expect(proven(first)).toEqual([true, false]);
  expect(proven(both)).toEqual([true, true]);
  expect(proven(story(dark, second, dark, fuse, good))).toEqual([false, true]);
});

test('nothing is closed as fixed while another complaint is open, and Close names it', () => {
  const open = story(dark, second, dark, fuse, good);

  expect(leftComplaints(open).map(({ title }) => title)).toEqual(['No light']);
  expect(leftLines(open)).toContain('Not mended: No light.');
  expect(leftLines(story(dark, fuse, second))).toContain('Not proven: No light.');
  expect(refused(open, { do: 'close', as: 'fixed' })).toBe('complaint-open');
  expect(decide(open, { do: 'close' }, world)).toMatchObject({
    payloads: [{ kind: 'closed', as: 'handed-on' }],
  });
});

test('findings, accesses and how the vehicle stands go along; what is told of it counts from there', () => {
  const before = story({ do: 'access', open: 'dash' }, { do: 'standing', key: 'run' }, dark);
  const now = story({ do: 'access', open: 'dash' }, { do: 'standing', key: 'run' }, dark, second);

  expect(now.open).toEqual(before.open);
  expect(now.standing).toEqual(before.standing);
  expect(now.due).toMatchObject({ kind: 'check' });
  expect(now.findings).toHaveLength(1);
});

test('a closed job is opened again for it', () => {
  const decision = decide(story(dark, { do: 'close', as: 'given-up' }), second, world);

  expect(decision).toMatchObject({ payloads: [{ kind: 'reopened' }, { kind: 'leg' }] });
});

test.each([
  [{ do: 'complaint', tree: 'no-light' }, 'same-tree'],
  [{ do: 'complaint', tree: 'none' }, 'unknown-tree'],
  [{ do: 'complaint', tree: 'other', facts: { wheels: 'nine' } }, 'unknown-fact'],
  [{ do: 'complaint', tree: 'other', sheet: { 'idle-vacuum': { reading: '18' } } }, 'unknown-book'],
] satisfies [Action, string][])('%j is refused as %s', (action, code) => {
  expect(refused(story(dark), action)).toBe(code);
});

test('who works is known from where it was said, and who works already is not said again', () => {
  const two = story(dark, { do: 'worker', who: 'C. of the night shift' });

  expect(workerAt(two)).toBe('C. of the night shift');
  expect(workerAt(two, 1)).not.toBe('C. of the night shift');
  const again: Action = { do: 'worker', who: 'C. of the night shift' };
  expect(refused(two, again)).toBe('same-worker');
});

test('a stranger reads neither name', () => {
  const { header, events } = after(
    [
      { do: 'worker', who: 'Night Shift' },
      { do: 'note', text: 'night shift says hello' },
    ],
    headerFor(),
    world,
  );
  const hidden = withoutNames({ header, events });

  expect(JSON.stringify(hidden)).not.toMatch(/night shift/i);
  expect(fold(hidden.header, hidden.events).workers.at(-1)?.who).toBe('another mechanic');
});

test('what an owner says is hidden too, and so are the words of a complaint without a tree', () => {
  const said = { ...headerFor(), said: 'the Orchard van is dead again' };
  const { header, events } = after(
    [{ do: 'own-leg', say: 'Orchard van: the wipers stop' }],
    said,
    world,
  );
  const hidden = withoutNames({ header, events });
  const own = fold(hidden.header, hidden.events).legs.at(-1)?.tree;

  expect(hidden.header.said).toBe('the vehicle is dead again');
  expect([own?.title, own?.complaint.say].join(' ')).not.toMatch(/orchard van/i);
});

test('a complaint in own words opens a closed job again as any other does', () => {
  const closed = story(dark, { do: 'close', as: 'given-up' });

  expect(decide(closed, { do: 'own-leg', say: 'wipers stop' }, world)).toMatchObject({
    payloads: [{ kind: 'reopened' }, { kind: 'leg', complaint: {} }],
  });
});
