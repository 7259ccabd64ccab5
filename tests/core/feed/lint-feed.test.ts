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

test('a limit on the very value that a fault reads is told', () => {
  const at = (volts: number): Tree => {
    const tree = shippedTree('slow-crank');
    const { 'battery-flat': flat } = tree.causes;
    if (flat === undefined) throw new Error('no flat battery');
    const fault = { battery: { volts, spread: 0.3, milliohm: 25, sigma: 0.5 } };
    return { ...tree, causes: { ...tree.causes, 'battery-flat': { ...flat, fault } } };
  };

  // The limits of the rested battery lie at 12.4, 12, 10.9 and 10.2 V.
  expect(toldBy(lintFeed, at(11.7))).toEqual([]);
  expect(toldBy(lintFeed, at(11.95))).toContain(
    'limit-on-fault checks.bat-rest-volts.results[1].from',
  );
});

test('a tree without a feed path has nothing to tell', () => {
  expect(toldBy(lintFeed, shippedTree('rough-idle'))).toEqual([]);
});
