import { describe, expect, test } from 'vitest';
import type { Done } from '../../../../src/core/tree/way/known.ts';
import { knownAfter } from '../../../../src/core/tree/way/known.ts';
import { leftUnasked, nextAfterRepair } from '../../../../src/core/tree/way/after-repair.ts';
import { nextOnWay } from '../../../../src/core/tree/way/way.ts';
import { smallTree, smallTreeData, waitingChecks } from '../../../helpers/tree.ts';

const shown = (check: string, result: number): Done => ({ kind: 'shown', check, result });
const repaired = (cause: string): Done => ({ kind: 'repaired', cause });
const passed = (check: string): Done => ({ kind: 'passed', check });
const [dark, whole, burnt] = [shown('lamp', 1), shown('look', 0), shown('look', 1)];
const check = (id: string, before?: string) => ({
  kind: 'check',
  check: id,
  ...(before !== undefined && { before }),
});

/** The small tree with its complaint leading straight to the measured check, which waits for `look`. */
const eager = (change: Readonly<Record<string, unknown>> = {}) => {
  const { lamp, look, volts } = waitingChecks();
  const results = [lamp.results[0], { ...lamp.results[1], next: 'volts' }];
  return smallTree({ checks: { lamp: { ...lamp, results }, look, volts }, ...change });
};

describe('a check behind a gate', () => {
  test("waits for the gate's own check, and comes when that opened it", () => {
    expect(nextOnWay(eager(), [dark])).toEqual(check('look', 'volts'));
    expect(nextOnWay(eager(), [dark, whole])).toEqual(check('volts'));
  });

  test("is left where the gate's check leads elsewhere", () => {
    expect(nextOnWay(eager(), [dark, burnt])).toEqual({ kind: 'cause', cause: 'fuse' });
  });

  test('is passed over where the gate was found shut before, not where the gate was passed over', () => {
    expect(nextOnWay(eager(), [burnt, dark])).toMatchObject({ kind: 'exhausted' });
    expect(nextOnWay(eager(), [passed('look'), dark])).toEqual(check('volts'));
  });

  test('is shut by a finding that may be either, wherever that stands', () => {
    const either = (result: number): Done => ({
      kind: 'shown',
      check: 'look',
      result,
      ends: [0, 1],
    });

    expect(nextOnWay(eager(), [either(0), dark])).toMatchObject({ kind: 'exhausted' });
    expect(nextOnWay(eager(), [either(1), dark])).toMatchObject({ kind: 'exhausted' });
  });
});

describe('a check that nobody could answer', () => {
  test('condemns nothing: the way goes on to the check that its healthy result has left', () => {
    const { lamp, look, volts } = smallTreeData().checks;
    const [well, ...ill] = look.results;
    const next = [{ if: { lamp: ['dark'] }, go: 'cause:fuse' }, 'volts'];
    const tree = smallTree({
      format: 2,
      checks: { lamp, look: { ...look, results: [{ ...well, next }, ...ill] }, volts },
    });

    expect(nextOnWay(tree, [dark, whole])).toEqual({ kind: 'cause', cause: 'fuse' });
    expect(nextOnWay(tree, [dark, passed('look')])).toEqual(check('volts'));
  });
});

describe('a safeguard', () => {
  const guarded = (before: Readonly<Record<string, unknown>>) =>
    smallTree({
      format: 2,
      safeguards: [{ before, check: 'look', shows: ['whole'], else: 'It would burn again.' }],
    });

  test('is asked before the step it guards, and stops the way where it was found wanting', () => {
    const tree = eager({
      format: 2,
      safeguards: guarded({ key: ['run'] }).safeguards,
    });

    expect(nextOnWay(tree, [dark])).toEqual(check('look', 'volts'));
    expect(nextOnWay(tree, [burnt, dark])).toEqual({
      kind: 'stop',
      reason: 'It would burn again.',
    });
    expect(nextOnWay(tree, [passed('look'), dark])).toMatchObject({ kind: 'stop' });
  });

  test('that forbids the complaint test has what its check names mended first', () => {
    const { checks } = smallTreeData();
    const tree = smallTree({
      format: 2,
      safeguards: guarded({ key: ['run'] }).safeguards,
      checks: { ...checks, lamp: { ...checks.lamp, standing: { key: 'run' } } },
    });

    expect(nextOnWay(tree, [])).toEqual(check('look', 'lamp'));
    expect(nextOnWay(tree, [burnt])).toEqual({ kind: 'cause', cause: 'fuse' });
    expect(nextOnWay(tree, [burnt, repaired('fuse')])).toEqual(check('look', 'lamp'));
    expect(nextOnWay(tree, [burnt, repaired('fuse'), burnt])).toMatchObject({ kind: 'stop' });
  });

  test("leads on from what it showed where it forbids the complaint's own test", () => {
    const tree = guarded({ key: ['run'] });
    const { lamp } = tree.checks;
    const live = { ...lamp, standing: { key: 'run' } };
    const held = { ...tree, checks: { ...tree.checks, lamp: live } } as typeof tree;

    expect(nextOnWay(held, [])).toEqual(check('look', 'lamp'));
    expect(nextOnWay(held, [whole])).toEqual(check('lamp'));
    expect(nextOnWay(held, [burnt])).toEqual({ kind: 'cause', cause: 'fuse' });
    expect(nextOnWay(held, [passed('look')])).toMatchObject({ kind: 'stop' });
  });

  test('comes before a repair that it guards', () => {
    const tree = guarded({ battery: ['disconnected'] });
    const volts = { ...tree.checks['volts'], after: undefined };
    const open = { ...tree, checks: { ...tree.checks, volts } } as typeof tree;

    expect(nextOnWay(open, [dark, shown('volts', 2)])).toEqual(check('look', 'cause:wire'));
    expect(nextOnWay(open, [dark, shown('volts', 2), whole])).toEqual({
      kind: 'cause',
      cause: 'wire',
    });
  });
});

describe('danger', () => {
  const { lamp, look, volts } = smallTreeData().checks;
  const results = [look.results[0], { id: 'burnt', label: 'x', next: 'stop', reason: 'Fire!' }];
  const checks = { lamp, look: { ...look, results }, volts: { ...volts, after: undefined } };

  test('ends the way at once, though baseline readings are left', () => {
    const tree = smallTree({ baseline: ['look', 'volts'], checks });

    expect(nextOnWay(tree, [dark, burnt])).toEqual({ kind: 'stop', reason: 'Fire!' });
    expect(nextOnWay(tree, [dark, whole])).toEqual(check('volts'));
  });
});

test('a result that names another tree leads there at once, though baseline readings are left', () => {
  const { lamp, look, volts } = smallTreeData().checks;
  const on = { next: 'tree:dim', reason: 'It is dim, not dark.' };
  const led = { kind: 'tree', tree: 'dim', reason: 'It is dim, not dark.' };
  const dim = [...lamp.results, { id: 'dim', label: 'x', ...on }];
  const looked = [look.results[0], { ...look.results[1], ...on }];
  const checks = { lamp: { ...lamp, results: dim }, look: { ...look, results: looked }, volts };

  expect(nextOnWay(smallTree({ baseline: ['volts'], checks }), [dark, burnt])).toEqual(led);
  expect(nextOnWay(smallTree({ baseline: ['volts'], checks }), [shown('lamp', 2)])).toEqual(led);
  expect(nextOnWay(smallTree({ baseline: ['look', 'volts'], checks }), [dark, burnt])).toEqual(
    check('volts'),
  );
});

describe('what lies behind a repair', () => {
  test('is asked anew where it was abnormal and shows the mended cause; else it stays known', () => {
    const known = knownAfter(smallTree(), [dark, burnt, shown('volts', 2), repaired('fuse')]);

    expect(['lamp', 'look', 'volts'].map(known)).toEqual([undefined, undefined, 2]);
    expect(knownAfter(smallTree(), [whole, repaired('fuse')])('look')).toBe(0);
  });

  test('is what the repair asks to repeat, then the proof', () => {
    const done = [dark, whole, shown('volts', 2), repaired('wire')];

    expect(nextAfterRepair(smallTree(), done, 'wire')).toEqual(check('volts'));
    expect(nextAfterRepair(smallTree(), [...done, shown('volts', 0)], 'wire')).toEqual(
      check('lamp'),
    );
  });
});

test('another tree is begun at its top, with what is known of it', () => {
  expect(nextOnWay(smallTree(), [dark, whole, { kind: 'begun' }])).toEqual(check('volts'));
});

describe('a cause behind the cause', () => {
  const { causes, ...rest } = smallTree({ checks: waitingChecks() });
  const { fuse } = causes;
  const tree = {
    ...rest,
    causes: { ...causes, ...(fuse && { fuse: { ...fuse, because: ['wire'] } }) },
  };
  const mended = [dark, burnt, repaired('fuse')];

  test('is asked after before the proof, and the job is not done without', () => {
    // The fuse was mended since it was looked at, and the volts mean nothing without it.
    expect(nextAfterRepair(tree, mended, 'fuse')).toEqual(check('look', 'volts'));
    expect(leftUnasked(tree, mended)).toEqual(['volts']);
  });

  test.each([
    ['was looked at', [...mended, shown('volts', 0)]],
    ['was passed over', [...mended, passed('volts')]],
    ['was mended too', [...mended, repaired('wire')]],
  ])('is not asked after once it %s', (_, done) => {
    expect(leftUnasked(tree, done)).toEqual([]);
  });

  test('is nothing to a cause that has none', () => {
    expect(leftUnasked(smallTree(), mended)).toEqual([]);
  });
});
