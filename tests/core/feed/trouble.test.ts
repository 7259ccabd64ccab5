import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Element } from '../../../src/core/feed/network.ts';
import { current, problemCodes, resistor, solveNetwork, source } from './build.ts';

const codesOf = (...elements: readonly Element[]): readonly string[] =>
  problemCodes(solveNetwork({ reference: '0', elements }));

test.each([
  {
    what: 'a part that nothing joins to the reference',
    parts: [source('a', '0', 12, 1), resistor('b', 'c', 1)],
    code: 'network-floating',
  },
  {
    what: 'a current into a part with no way home',
    parts: [source('a', '0', 12, 1), current('b', '0', 3)],
    code: 'network-floating',
  },
  {
    what: 'a perfect source with its ends joined',
    parts: [source('a', 'a', 12)],
    code: 'network-source-loop',
  },
  {
    what: 'two perfect sources side by side',
    parts: [source('a', '0', 12), { ...source('a', '0', 6), id: 'second' }, resistor('a', '0', 1)],
    code: 'network-source-loop',
  },
  { what: 'no ohms at all', parts: [resistor('a', '0', 0)], code: 'network-amount' },
  { what: 'ohms below nothing', parts: [resistor('a', '0', -1)], code: 'network-amount' },
  { what: 'volts that are no number', parts: [source('a', '0', NaN, 1)], code: 'network-amount' },
  { what: 'inner ohms below nothing', parts: [source('a', '0', 1, -1)], code: 'network-amount' },
  {
    what: 'a current that is no number',
    parts: [current('a', '0', NaN), resistor('a', '0', 1)],
    code: 'network-amount',
  },
  {
    what: 'two parts of one name',
    parts: [resistor('a', '0', 1), resistor('a', '0', 2)],
    code: 'network-same-name',
  },
])('$what is told, not solved', ({ parts, code }) => {
  expect(codesOf(...parts)).toEqual([code]);
});

test('every wrong amount is told at once', () => {
  expect(
    codesOf(resistor('a', '0', 0), resistor('b', '0', Infinity), source('c', '0', NaN)),
  ).toEqual(['network-amount', 'network-amount', 'network-amount']);
});

test('whatever parts are thrown together, the answer is finite or a problem', () => {
  const node = fc.constantFrom('0', 'a', 'b', 'c', 'd');
  const part = fc.record({
    kind: fc.constantFrom('resistor', 'source'),
    from: node,
    to: node,
    ohms: fc.oneof(fc.constantFrom(0, -1, NaN, Infinity), fc.double({ min: 1e-6, max: 1e7 })),
    volts: fc.double({ min: -20, max: 20, noNaN: true }),
  });
  const amountsOf = (parts: readonly Omit<Element & { kind: 'source' }, 'id' | 'kind'>[]) => {
    const elements = parts.map((one, at) => ({ ...one, id: String(at) }) as Element);
    const answer = solveNetwork({ reference: '0', elements });
    if (answer.kind === 'bad') return answer.problems.map((problem) => problem.code.length);
    return [...answer.value.volts.values(), ...answer.value.amps.values()];
  };

  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 9 }), (parts) => {
      const amounts = amountsOf(parts);

      expect(amounts.length).toBeGreaterThan(0);
      expect(amounts.every(Number.isFinite)).toBe(true);
    }),
    { seed: 20260411, numRuns: 2000 },
  );
});
