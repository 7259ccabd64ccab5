import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { Element, Network } from '../../../src/core/feed/network.ts';
import { factorNetwork } from '../../../src/core/feed/solve.ts';
import { good } from '../../../src/core/problem.ts';
import type { Parsed } from '../../../src/core/problem.ts';
import { CheckFeed, Feed } from '../../../src/core/tree/feed-model.ts';

const fixtures = new URL('../../fixtures/feeds/', import.meta.url);

export const readFixture = (name: string): unknown =>
  JSON.parse(readFileSync(new URL(name, fixtures), 'utf8'));

export type FeedName = 'no-supply' | 'crank' | 'charging' | 'headlamp';

export const feedNamed = (name: FeedName): Feed => Feed.parse(readFixture(`${name}-feed.json`));

export const resistor = (from: string, to: string, ohms: number): Element => ({
  kind: 'resistor',
  id: `${from}-${to}`,
  from,
  to,
  ohms,
});

export const source = (from: string, to: string, volts: number, ohms = 0): Element => ({
  kind: 'source',
  id: `source ${from}-${to}`,
  from,
  to,
  volts,
  ohms,
});

export const current = (from: string, to: string, amps: number): Element => ({
  kind: 'current',
  id: `current ${from}-${to}`,
  from,
  to,
  amps,
});

/** The value, or a failed test that shows every problem. */
export function value<T>(parsed: Parsed<T>): T {
  if (parsed.kind === 'bad') expect.fail(parsed.problems.map(({ message }) => message).join('\n'));
  return parsed.value;
}

export const problemCodes = (parsed: Parsed<unknown>): readonly string[] =>
  parsed.kind === 'bad' ? parsed.problems.map(({ code }) => code) : [];

/** Volts of each node, and amps of each part from `from` to `to`; perfect sources tell no amps. */
export type Solution = {
  readonly volts: ReadonlyMap<string, number>;
  readonly amps: ReadonlyMap<string, number>;
};

export function solveNetwork(network: Network): Parsed<Solution> {
  const factored = factorNetwork(network);
  if (factored.kind === 'bad') return factored;
  const { plain, volts: ask } = factored.value;
  const found = ask();
  const volts = new Map([...plain.nodes].map(([name, node]) => [name, found[node]!]));
  const branches = plain.branches.map(({ id, from, to, siemens, volts: own }) => {
    const across = volts.get(from)! - volts.get(to)!;
    return [id, siemens * (across - own)] as const;
  });
  const amps = new Map([...branches, ...plain.pushes.map((push) => [push.id, push.amps] as const)]);
  return good({ volts, amps });
}

export const solved = (...elements: readonly Element[]): Solution =>
  value(solveNetwork({ reference: '0', elements }));

/** How far a found number lies from the wanted one; not a number when nothing was found. */
export const apart = (found: number | undefined, wanted: number): number =>
  Math.abs((found ?? NaN) - wanted);

/** A small generator of numbers from 0 to 1 with a seed (mulberry32), so that a run can be repeated. */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export const check = (fields: Parameters<typeof CheckFeed.parse>[0]): CheckFeed =>
  CheckFeed.parse(fields);
