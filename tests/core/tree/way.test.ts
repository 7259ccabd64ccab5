import { describe, expect, test } from 'vitest';
import { along, leadFrom, type Known } from '../../../src/core/tree/way.ts';
import { smallTree, smallTreeData } from '../../helpers/tree.ts';

const tree = smallTree();
const to = (check: string) => ({ next: { kind: 'check' as const, check } });
const knowing =
  (known: Readonly<Record<string, Known>>) =>
  (check: string): Known =>
    known[check];

describe('where a check leads', () => {
  test('by its result, with the reason', () => {
    expect(leadFrom(tree, 'look', 1)).toMatchObject({ next: { kind: 'cause', cause: 'fuse' } });
    expect(leadFrom(tree, 'volts', 0)).toEqual({ next: { kind: 'stop' }, reason: 'Neither fits.' });
  });

  test('passed over it goes on as if healthy, but condemns and ends nothing', () => {
    expect(leadFrom(tree, 'look', 'passed')).toEqual(to('volts'));
    expect(leadFrom(tree, 'volts', 'passed')).toBeUndefined();
  });

  test('nowhere without a next, or without such a check', () => {
    const { look } = smallTreeData().checks;
    const results = [{ id: 'whole', label: 'whole' }, look.results[1]];
    const open = smallTree({ checks: { ...smallTreeData().checks, look: { ...look, results } } });

    expect(leadFrom(open, 'look', 0)).toBeUndefined();
    expect(leadFrom(tree, 'no-such', 0)).toBeUndefined();
  });
});

describe('along the way', () => {
  test('it stops at the first check that is not known', () => {
    expect(along(tree, to('look'), knowing({}))).toEqual(to('look'));
    expect(along(tree, to('look'), knowing({ look: 0 }))).toMatchObject(to('volts'));
  });

  test('it ends at a cause, or with the reason of the last lead', () => {
    expect(along(tree, to('look'), knowing({ look: 1 }))?.next).toEqual({
      kind: 'cause',
      cause: 'fuse',
    });
    expect(along(tree, to('look'), knowing({ look: 0, volts: 0 }))?.reason).toBe('Neither fits.');
  });

  test('it gives out in a circle, at a check the tree has not, and without a lead', () => {
    const { look } = smallTreeData().checks;
    const results = [{ ...look.results[0], next: 'look' }, look.results[1]];
    const round = smallTree({ checks: { ...smallTreeData().checks, look: { ...look, results } } });

    expect(along(round, to('look'), knowing({ look: 0 }))).toBeUndefined();
    expect(along(tree, to('no-such'), knowing({}))).toBeUndefined();
    expect(along(tree, undefined, knowing({}))).toBeUndefined();
  });
});
