import { expect, test } from 'vitest';
import { inLanes } from '../../../src/core/drawing/tree-lanes.ts';

const lanesOf = (...buses: readonly (readonly [string, number, readonly number[]])[]) =>
  Object.fromEntries(
    inLanes(buses.map(([target, entry, from]) => ({ target, entry, from }))).map((bus) => [
      bus.target,
      bus.lane,
    ]),
  );

test('runs that do not meet share the innermost lane', () => {
  expect(lanesOf(['a', 50, [10]], ['b', 120, [80]])).toEqual({ a: 0, b: 0 });
});

test('of two that meet the shorter runs inside', () => {
  expect(lanesOf(['long', 400, [10, 20]], ['short', 120, [80]])).toEqual({ long: 1, short: 0 });
});

test('a run that leads back up takes its room from its check down to its row', () => {
  expect(lanesOf(['back', 10, [100]], ['on', 150, [90]])).toEqual({ on: 0, back: 1 });
});

test('two that would touch end to end stand in two lanes', () => {
  expect(lanesOf(['a', 50, [10]], ['b', 99, [55]])).toEqual({ a: 0, b: 1 });
});
