import { expect, test } from 'vitest';
import { lintFeed } from '../../../src/core/feed/lint-feed.ts';
import type { Check, Tree } from '../../../src/core/tree/model.ts';
import { shippedTree } from '../../helpers/library.ts';
import { toldBy } from '../../helpers/lint.ts';

const changed = (id: string, change: (check: Check) => Partial<Check>): Tree => {
  const tree = shippedTree('no-supply');
  const check = tree.checks[id];
  if (check === undefined) throw new Error(`no check ${id}`);
  return { ...tree, checks: { ...tree.checks, [id]: { ...check, ...change(check) } } };
};

test('limits that a sound vehicle does not meet are told', () => {
  const tree = changed('bat-rest-volts', ({ results }) => ({
    results: results.map((result, index) => ({
      ...result,
      ...(index === 0 && { from: 14 }),
      ...(index === 1 && { below: 14 }),
    })),
  }));

  expect(toldBy(lintFeed, tree)).toEqual(['band-against-circuit checks.bat-rest-volts.results[0]']);
});

test('a switch that the check does not close leaves no volts, and is told', () => {
  const tree = changed('link-volts', () => ({}));
  const { feed } = tree;
  if (feed === undefined) throw new Error('no feed');
  const spans = feed.spans.map((span, index) => (index === 0 ? { ...span, switch: 'key' } : span));
  const told = toldBy(lintFeed, { ...tree, feed: { ...feed, spans } });

  expect(told).toContain('band-against-circuit checks.link-volts.results[0]');
});

test('a unit in which no circuit is worked out is told', () => {
  const tree = changed('link-volts', ({ reading }) => ({
    reading: reading && { ...reading, unit: 'mV' },
  }));

  expect(toldBy(lintFeed, tree)).toEqual(['feed-unit checks.link-volts.reading.unit']);
});

test('a tree without a feed path has nothing to tell', () => {
  expect(toldBy(lintFeed, shippedTree('rough-idle'))).toEqual([]);
});
