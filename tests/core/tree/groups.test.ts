import { expect, test } from 'vitest';
import { byGroup, groupedTitle, groups } from '../../../src/core/tree/groups.ts';
import { shippedTrees } from '../../helpers/library.ts';

test('every shipped tree says what it is about', () => {
  expect(
    shippedTrees()
      .filter(({ group }) => group === undefined)
      .map(({ id }) => id),
  ).toEqual([]);
});

test('complaints are listed by group, in the order in which they came within one', () => {
  const listed = byGroup([
    { id: 'a', group: 'brakes' },
    { id: 'b' },
    { id: 'c', group: 'electrical' },
    { id: 'd', group: 'brakes' },
  ]);

  expect(listed.map(({ id }) => id)).toEqual(['c', 'a', 'd', 'b']);
  expect(groups[0]).toBe('electrical');
});

test('a tree of no group stands by its title alone', () => {
  expect(groupedTitle({ title: 'No light' })).toBe('No light');
  expect(groupedTitle({ title: 'No light', group: 'engine' })).toBe('engine: No light');
});
