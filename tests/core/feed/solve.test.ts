import { expect, test } from 'vitest';
import { apart, current, resistor, solved, solveNetwork, source, value } from './build.ts';
import { exactVolts } from './exact.ts';
import { randomNetwork } from './random-network.ts';

// Worked from Ohm's and Kirchhoff's laws, as in any textbook of electric circuits (from memory).

test('a divider of 1 and 2 ohm on 12 V shows 8 V between them', () => {
  const { volts, amps } = solved(
    source('a', '0', 12),
    resistor('a', 'b', 1),
    resistor('b', '0', 2),
  );

  expect(apart(volts.get('b'), 8)).toBeLessThan(1e-12);
  expect(apart(amps.get('a-b'), 4)).toBeLessThan(1e-12);
});

const bridge = (last: number) =>
  solved(
    source('top', '0', 10),
    resistor('top', 'left', 100),
    resistor('left', '0', 200),
    resistor('top', 'right', 150),
    resistor('right', '0', last),
    resistor('left', 'right', 50),
  );

test('a balanced bridge has no current in its meter', () => {
  const { volts, amps } = bridge(300);

  expect(apart(amps.get('left-right'), 0)).toBeLessThan(1e-12);
  expect(apart(volts.get('left'), 20 / 3)).toBeLessThan(1e-12);
});

test('an unbalanced bridge gives the current that its Thevenin equal gives', () => {
  const { amps } = bridge(600);

  // Open: 6.667 V and 8 V behind 100·200/300 and 150·600/750 ohm, across 50 ohm.
  expect(apart(amps.get('left-right'), (20 / 3 - 8) / (200 / 3 + 120 + 50))).toBeLessThan(1e-12);
});

test('a ladder of equal resistors falls by ratios of the Fibonacci numbers', () => {
  const rungs = ['a', 'b', 'c', 'd'];
  const { volts } = solved(
    source('in', '0', 34),
    ...rungs.flatMap((rung, at) => [
      resistor(rungs[at - 1] ?? 'in', rung, 1),
      resistor(rung, '0', 1),
    ]),
  );

  // 34 : 13 : 5 : 2 : 1 (every second Fibonacci number).
  expect(apart(volts.get('a'), 13)).toBeLessThan(1e-12);
  expect(apart(volts.get('b'), 5)).toBeLessThan(1e-12);
  expect(apart(volts.get('c'), 2)).toBeLessThan(1e-12);
  expect(apart(volts.get('d'), 1)).toBeLessThan(1e-12);
});

test('of two batteries in parallel the fuller one charges the other', () => {
  const { volts, amps } = solved(source('plus', '0', 12.6, 0.01), {
    ...source('plus', '0', 11.8, 0.03),
    id: 'flat one',
  });

  expect(apart(amps.get('flat one'), 20)).toBeLessThan(1e-10);
  expect(apart(amps.get('source plus-0'), -20)).toBeLessThan(1e-10);
  expect(apart(volts.get('plus'), 12.4)).toBeLessThan(1e-12);
});

// FAA AC 43.13-1B Chg 1 (2001) Tables 11-7/11-8, worked voltage drops at 20 A (read); the 88 ft one
// is printed as 3.60 for a product of 3.555.
test.each([
  { ohmsPerFoot: 0.00028, feet: 90, drop: 0.504, within: 0.001 },
  { ohmsPerFoot: 0.00306, feet: 100, drop: 6.12, within: 0.005 },
  { ohmsPerFoot: 0.00126, feet: 156, drop: 3.93, within: 0.005 },
  { ohmsPerFoot: 0.00202, feet: 88, drop: 3.6, within: 0.05 },
])(
  'a wire of $feet ft at 20 A drops the published $drop V',
  ({ ohmsPerFoot, feet, drop, within }) => {
    const { volts } = solved(
      source('bus', '0', 28),
      resistor('bus', 'load', ohmsPerFoot * feet),
      current('load', '0', 20),
    );

    expect(apart((volts.get('bus') ?? 0) - (volts.get('load') ?? 0), drop)).toBeLessThan(within);
  },
);

test('ideal sources in a chain hold their nodes', () => {
  const { volts } = solved(
    source('a', '0', 6),
    source('b', 'a', 6),
    source('b', 'c', 2),
    resistor('c', '0', 5),
    resistor('a', '0', 3),
  );

  expect(apart(volts.get('c'), 10)).toBeLessThan(1e-12);
});

test('200 random circuits agree with exact arithmetic to a billionth of a volt', () => {
  const worst = Array.from({ length: 200 }, (_none, seed) => {
    const network = randomNetwork(seed);
    const { volts } = value(solveNetwork(network));
    return Math.max(
      ...[...exactVolts(network)].map(([name, wanted]) =>
        Math.abs((volts.get(name) ?? NaN) - wanted),
      ),
    );
  });

  expect(Math.max(...worst)).toBeLessThan(1e-9);
});

test('in 200 random circuits no node gains or loses current, perfect sources aside', () => {
  const leaks = Array.from({ length: 200 }, (_none, seed) => {
    const network = randomNetwork(seed);
    const { amps } = value(solveNetwork(network));
    const held = new Set(
      network.elements.flatMap((part) =>
        part.kind === 'source' && part.ohms === 0 ? [part.from, part.to] : [],
      ),
    );
    const sums = new Map<string, number>();
    for (const { id, from, to } of network.elements) {
      sums.set(from, (sums.get(from) ?? 0) + (amps.get(id) ?? 0));
      sums.set(to, (sums.get(to) ?? 0) - (amps.get(id) ?? 0));
    }
    return Math.max(...[...sums].map(([node, sum]) => (held.has(node) ? 0 : Math.abs(sum))));
  });

  expect(Math.max(...leaks)).toBeLessThan(1e-9);
});

test('a 10 megohm meter behind a 0.3 milliohm clamp costs no digits', () => {
  const { volts } = solved(
    source('emf', '0', 12.65),
    resistor('emf', 'post', 0.009),
    resistor('post', 'clamp', 0.0003),
    resistor('clamp', '0', 10e6),
  );

  expect(apart(volts.get('clamp'), (12.65 * 10e6) / (10e6 + 0.0093))).toBeLessThan(1e-14);
});
