import { describe, expect, test } from 'vitest';
import { exists, factsAsked, factsToAsk, fitTree, misfit } from '../../../src/core/tree/fit.ts';
import { parseTreeValue } from '../../../src/core/tree/parse.ts';
import { planted, type Fault } from '../../helpers/plant.ts';
import { smallShop } from '../../helpers/tree.ts';

const manual = { choke: 'manual' };

const treeWith = (...faults: readonly Fault[]) => {
  const parsed = parseTreeValue(planted(...faults), 'small.json', smallShop);
  if (parsed.kind === 'bad') throw new Error(JSON.stringify(parsed.problems));
  return parsed.value;
};

describe('what exists on a vehicle', () => {
  test.each([
    ['no condition', undefined, {}, true],
    ['a fact not known', manual, {}, true],
    ['the same fact', manual, { choke: 'manual' }, true],
    ['another fact', manual, { choke: 'automatic' }, false],
    ['one of several', { choke: ['manual', 'none'] }, { choke: 'none' }, true],
    ['none of several', { choke: ['manual', 'none'] }, { choke: 'automatic' }, false],
    [
      'two conditions, one unmet',
      { choke: 'manual', fan: 'electric' },
      { choke: 'manual', fan: 'fixed' },
      false,
    ],
  ] as const)('%s', (_, when, facts, there) => {
    expect(exists(when && (structuredClone(when) as Record<string, string>), facts)).toBe(there);
  });
});

describe('fitting a tree to a vehicle', () => {
  test('a tree that does not ask for the volts is wrong for 6 V, one that asks is not', () => {
    const tree = treeWith();
    const when = { volts: '12-volt' };
    const causes = Object.fromEntries(
      Object.entries(tree.causes).map(([id, cause]) => [id, { ...cause, when }]),
    );

    expect(misfit(tree, { volts: '6-volt' })).toMatchObject({ code: 'tree-for-12-volts' });
    expect(misfit(tree, { volts: '12-volt' })).toBeUndefined();
    expect(misfit(tree, {})).toBeUndefined();
    expect(misfit({ ...tree, causes }, { volts: '6-volt' })).toBeUndefined();
  });

  test('each fact is asked once, and only if the tree needs it', () => {
    const tree = treeWith(
      ['causes.fuse.when', manual],
      ['checks.look.when', manual],
      ['checks.volts.results.1.when', { choke: 'automatic' }],
    );

    expect(factsAsked(tree)).toEqual(['choke']);
    expect(factsAsked(treeWith())).toEqual([]);
    // The small tree reads volts.
    expect(factsToAsk(tree)).toEqual(['volts', 'choke']);
  });

  test('a vehicle of which nothing is known keeps the whole tree', () => {
    const tree = treeWith(['causes.fuse.when', manual]);

    expect(fitTree(tree, {})).toBe(tree);
    expect(fitTree(tree, { fan: 'electric' })).toBe(tree);
  });

  test('a cause it cannot have is gone, with its rows', () => {
    const fitted = fitTree(treeWith(['causes.fuse.when', manual]), { choke: 'automatic' });

    expect(Object.keys(fitted.causes)).toEqual(['wire']);
    expect(fitted.checks['look']?.points).toEqual({});
  });

  test('a check it cannot have is gone, and what led there leads on', () => {
    const tree = treeWith(['checks.look.when', manual], ['baseline', ['look', 'volts']]);
    const fitted = fitTree(tree, { choke: 'automatic' });

    expect(Object.keys(fitted.checks)).toEqual(['lamp', 'volts']);
    expect(fitted.baseline).toEqual(['volts']);
    expect(fitted.checks['lamp']?.results.map(({ next }) => next)).toEqual(['stop', 'volts']);
  });

  test('checks that are gone and lead to one another in a ring lead nowhere', () => {
    const tree = treeWith(
      ['checks.look.when', manual],
      ['checks.volts.when', manual],
      ['checks.volts.results.0.next', 'look'],
    );
    const fitted = fitTree(tree, { choke: 'automatic' });

    expect(fitted.checks['lamp']?.results.map(({ next }) => next)).toEqual(['stop', undefined]);
  });

  test('a result it cannot show is gone, and the others share its chance', () => {
    const tree = treeWith(['checks.volts.results.2.when', manual]);
    const volts = fitTree(tree, { choke: 'automatic' }).checks['volts'];

    expect(volts?.results.map(({ id }) => id)).toEqual(['full', 'low']);
    // From 0.97, 0.02, 0.01 and 0.05, 0.15, 0.8 with the last left out, by hand.
    expect(volts?.background?.[0]).toBeCloseTo(0.97 / 0.99, 12);
    expect(volts?.background?.[1]).toBeCloseTo(0.02 / 0.99, 12);
    expect(volts?.points['wire']?.[0]).toBeCloseTo(0.25, 12);
    expect(volts?.points['wire']?.[1]).toBeCloseTo(0.75, 12);
  });

  test('a row with nothing left is shared out evenly', () => {
    const tree = treeWith(
      ['checks.volts.results.2.when', manual],
      ['checks.volts.points.wire', [0, 0, 1]],
    );

    expect(fitTree(tree, { choke: 'automatic' }).checks['volts']?.points['wire']).toEqual([
      0.5, 0.5,
    ]);
  });

  describe('a lead to a check it has not', () => {
    const burntFirst = { if: { lamp: ['dark'] }, go: 'cause:fuse' };
    const led = (lampNext: unknown, lookNext: unknown) => {
      const tree = treeWith(
        ['format', 2],
        ['checks.look.when', manual],
        ['checks.lamp.results.1.next', lampNext],
        ['checks.look.results.0.next', lookNext],
      );
      const { leads, next } =
        fitTree(tree, { choke: 'automatic' }).checks['lamp']?.results[1] ?? {};
      return { leads, next };
    };

    test('takes over the leads that hang on what is known there', () => {
      expect(led('look', [burntFirst, 'volts'])).toEqual({ leads: [burntFirst], next: 'volts' });
    });

    test('holds only where its own condition and the one behind it do', () => {
      const low = { if: { volts: ['low', 'dead'] }, go: 'look' };
      const dead = { if: { volts: ['dead'], lamp: ['dark'] }, go: 'cause:wire' };

      expect(led([low, 'cause:fuse'], [dead, 'volts'])).toEqual({
        leads: [
          { if: { volts: ['dead'], lamp: ['dark'] }, go: 'cause:wire' },
          { if: { volts: ['low', 'dead'] }, go: 'volts' },
        ],
        next: 'cause:fuse',
      });
    });

    test('is gone where the two ask one check for different results', () => {
      const low = { if: { volts: ['low'] }, go: 'look' };
      const dead = { if: { volts: ['dead'] }, go: 'cause:wire' };

      expect(led([low, 'cause:fuse'], [dead, 'volts']).leads).toEqual([
        { if: { volts: ['low'] }, go: 'volts' },
      ]);
    });
  });

  test('a start that the vehicle has not gives way to where it would have led', () => {
    const fitted = fitTree(treeWith(['checks.look.when', manual]), { choke: 'automatic' });

    expect(fitted.start).toBe('volts');
  });
});
