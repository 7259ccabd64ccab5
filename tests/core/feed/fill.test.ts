import { expect, test } from 'vitest';
import { feedProblems, fillTree } from '../../../src/core/feed/fill.ts';
import { shippedTree } from '../../helpers/library.ts';

const rowsOf = (check: string) => fillTree(shippedTree('no-supply'), {}).checks[check];

test('a check that reads the feed path gets its rows from the circuit', () => {
  const check = rowsOf('ammeter-drop');

  expect(check?.background).toHaveLength(3);
  expect(check?.points['ammeter']?.[2]).toBeGreaterThan(0.8);
  expect(check?.points['fuse-link']).toBeUndefined();
});

test('every row it works out adds up to one, and nothing is impossible', () => {
  const { checks } = fillTree(shippedTree('no-supply'), {});
  const rows = Object.values(checks)
    .filter(({ feed }) => feed !== undefined)
    .flatMap(({ background = [], points }) => [background, ...Object.values(points)]);

  for (const row of rows) {
    expect(row.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9);
    expect(Math.min(...row)).toBeGreaterThanOrEqual(0.005 - 1e-12);
  }
});

test('rows typed by hand stand beside it', () => {
  expect(rowsOf('stud-volts')?.points['isolator']).toEqual([0.6, 0.02, 0.38]);
  expect(rowsOf('bat-rest-volts')?.background).toEqual(
    shippedTree('no-supply').checks['bat-rest-volts']?.background,
  );
});

test('a tree without a feed path stays as it is', () => {
  const tree = shippedTree('rough-idle');

  expect(fillTree(tree, {})).toBe(tree);
});

test('a check that names a station which is not there is told, with the place', () => {
  const tree = shippedTree('no-supply');
  const check = tree.checks['stud-volts'];
  if (check === undefined) throw new Error('no such check');
  const strange = { ...check, feed: { station: 'moon', load: [], reads: 'volts' as const } };

  const problems = feedProblems(
    { ...tree, checks: { ...tree.checks, 'stud-volts': strange } },
    'no-supply.json',
  );

  expect(problems).toMatchObject([{ path: 'checks.stud-volts.feed', value: 'moon' }]);
});
