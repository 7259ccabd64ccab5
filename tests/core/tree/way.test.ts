import { describe, expect, test } from 'vitest';
import { isStale, nextOnWay, type Known, type Knowledge } from '../../../src/core/tree/way.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { smallTree, smallTreeData } from '../../helpers/tree.ts';

const { lamp, look, volts } = smallTreeData().checks;
const treeWith = (checks: Record<string, unknown>, change: Record<string, unknown> = {}): Tree =>
  smallTree({ checks: { lamp, look, volts, ...checks }, ...change });

/** Answers in their order, by place among the results. */
const knowing = (answers: Readonly<Record<string, Known>>, mended = ''): Knowledge => ({
  knownOf: (check) => answers[check],
  last: Object.keys(answers).at(-1),
  isMended: (cause) => cause === mended,
});
const check = (id: string) => ({ kind: 'check', check: id });

describe("the tree's own way", () => {
  const tree = smallTree();

  test("begins with the complaint's own test and goes where its result leads", () => {
    expect(nextOnWay(tree, knowing({}))).toEqual(check('lamp'));
    expect(nextOnWay(tree, knowing({ lamp: 1 }))).toEqual(check('look'));
  });

  test('stops where the complaint does not show, with the reason', () => {
    expect(nextOnWay(tree, knowing({ lamp: 0 }))).toEqual({
      kind: 'stop',
      reason: 'The lamp lights.',
    });
  });

  test('goes on from the check answered last, past what is known', () => {
    expect(nextOnWay(tree, knowing({ lamp: 1, look: 0 }))).toEqual(check('volts'));
    expect(nextOnWay(tree, knowing({ volts: 0, lamp: 1, look: 0 }))).toEqual({
      kind: 'stop',
      reason: 'Neither fits.',
    });
  });

  test('names a cause, and has no more to say once that is mended', () => {
    expect(nextOnWay(tree, knowing({ lamp: 1, look: 1 }))).toEqual({
      kind: 'cause',
      cause: 'fuse',
    });
    expect(nextOnWay(tree, knowing({ lamp: 1, look: 1 }, 'fuse')).kind).toBe('exhausted');
  });

  test('passes a check that was passed over as if healthy, but ends nothing by it', () => {
    const open = treeWith({ volts: { ...volts, after: undefined } });

    expect(nextOnWay(open, knowing({ lamp: 1, look: 'passed' }))).toEqual(check('volts'));
    expect(nextOnWay(open, knowing({ lamp: 1, look: 'passed', volts: 'passed' })).kind).toBe(
      'exhausted',
    );
  });

  test('is exhausted in a circle and where a result leads nowhere', () => {
    const round = [{ ...look.results[0], next: 'look' }, look.results[1]];
    const open = [{ id: 'whole', label: 'whole' }, look.results[1]];

    for (const results of [round, open])
      expect(
        nextOnWay(treeWith({ look: { ...look, results } }), knowing({ lamp: 1, look: 0 })).kind,
      ).toBe('exhausted');
  });
});

describe('what comes before', () => {
  test('a baseline reading is taken before the way goes on, and met again on it', () => {
    const tree = smallTree({
      baseline: ['volts'],
      checks: { lamp, look, volts: { ...volts, after: undefined } },
    });

    expect(nextOnWay(tree, knowing({ lamp: 1 }))).toEqual(check('volts'));
    expect(nextOnWay(tree, knowing({ lamp: 1, look: 0 }))).toEqual(check('volts'));
  });

  test('a baseline reading that names an end ends the way there', () => {
    const tree = smallTree({ baseline: ['look', 'volts'] });

    expect(nextOnWay(tree, knowing({ lamp: 1, look: 1 }))).toEqual({
      kind: 'cause',
      cause: 'fuse',
    });
  });

  test('a check behind an "after" waits for it, and is passed over where it was not met', () => {
    const tree = smallTree({
      start: 'volts',
      checks: {
        look,
        volts,
        lamp: { ...lamp, results: [lamp.results[0], { ...lamp.results[1], next: 'volts' }] },
      },
    });

    expect(nextOnWay(tree, knowing({ lamp: 1 }))).toEqual(check('look'));
    expect(nextOnWay(tree, knowing({ look: 1, lamp: 1 })).kind).toBe('exhausted');
    expect(nextOnWay(tree, knowing({ look: 0, lamp: 1 }))).toEqual(check('volts'));
  });

  test("a safeguard comes before the complaint's own test, and ends the way where it shows danger", () => {
    const tree = smallTree({
      format: 2,
      safeguards: [
        { before: { key: ['run'] }, check: 'look', shows: ['whole'], else: 'It burns.' },
      ],
      checks: { look, volts, lamp: { ...lamp, standing: { key: 'run' } } },
    });

    expect(nextOnWay(tree, knowing({}))).toEqual(check('look'));
    expect(nextOnWay(tree, knowing({ look: 0 }))).toEqual(check('lamp'));
    expect(nextOnWay(tree, knowing({ look: 1 }))).toEqual({ kind: 'stop', reason: 'It burns.' });
  });

  test('two checks that wait for one another are both passed over', () => {
    const tree = treeWith({
      look: { ...look, after: { volts: ['full'] } },
    });

    expect(nextOnWay(tree, knowing({ lamp: 1 })).kind).toBe('exhausted');
  });
});

test('a repair makes stale what was abnormal and shows the mended cause, nothing else', () => {
  const tree = smallTree();

  expect(isStale(tree, 'volts', 1, ['wire'])).toBe(true);
  expect(isStale(tree, 'volts', 0, ['wire'])).toBe(false);
  expect(isStale(tree, 'volts', 1, ['fuse'])).toBe(false);
  expect(isStale(tree, 'volts', 1, [])).toBe(false);
});
