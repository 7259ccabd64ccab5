import { expect, test } from 'vitest';
import { networkOf } from '../../../src/core/feed/circuit.ts';
import { lampAmps } from '../../../src/core/feed/lamp.ts';
import { spanId } from '../../../src/core/feed/path.ts';
import type { Change } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { lampAmpsAt } from '../../../src/core/trade/figures/lamps.ts';
import { apart, feedNamed, numbersFrom, solveNetwork, value } from './build.ts';

const lamp = { ohms: 12.8 / 4.3, rated: 12.8 };

// Lamp rerating, the law as an open encyclopedia prints it (read): amps go as volts to the 0.55,
// so the watts go as volts to the 1.55 (printed there, rounded, as 1.6).
test.each([
  { volts: 12.8, amps: 4.3 },
  { volts: 6.4, amps: 4.3 * 0.5 ** 0.55 },
  { volts: 1.28, amps: 4.3 * 0.1 ** 0.55 },
  { volts: -6.4, amps: -4.3 * 0.5 ** 0.55 },
  // Cold, a tenth of the ohms.
  { volts: 0.05, amps: 0.05 / (0.1 * (12.8 / 4.3)) },
  { volts: 0, amps: 0 },
])('a lamp of 4.3 A at 12.8 V draws $amps A at $volts V', ({ volts, amps }) => {
  expect(apart(lampAmps(lamp, volts), amps)).toBeLessThan(1e-12);
});

test('the feed and the figure lamp-current have one law', () => {
  for (const volts of [1, 3, 8.6, 12.8, 14.4])
    expect(
      apart(lampAmps(lamp, volts), lampAmpsAt({ amps: 4.3, volts: 12.8 }, volts)),
    ).toBeLessThan(1e-12);
});

test('half an ohm in the bulkhead: the lamps take more than a resistor would, and glow as worked', () => {
  const change = { kind: 'ohms', part: 'bulk-e:bulk-d', ohms: 0.5 } as const;
  const feed = feedNamed('no-supply');

  const state = solveFeed(feed, { on: ['headlamps'] }, [change]);
  const resistors = solveFeed(feed, { on: ['headlamps'], filaments: 'hot' }, [change]);

  // Worked with another nodal solver and lamps iterated: 8.68 V at the lamp, 3.46 V over the joint.
  expect(apart(state.volts('lamp-l-pin'), 8.68)).toBeLessThan(0.02);
  expect(apart(state.volts('bulk-e') - state.volts('bulk-d'), 3.46)).toBeLessThan(0.02);
  expect(resistors.volts('lamp-l-pin')).toBeGreaterThan(9);
});

/** Faults drawn one or two at a time, from a tenth of a milliohm to ten kilohm or open. */
function drawnFaults(seed: number): readonly Change[] {
  const next = numbersFrom(seed);
  const { spans } = feedNamed('no-supply');
  const one = (): Change => {
    const part = spanId(spans[Math.floor(next() * spans.length)]!);
    return next() < 0.15
      ? { kind: 'open', part }
      : { kind: 'ohms', part, ohms: 10 ** (-4 + 8 * next()) };
  };
  return next() < 0.5 ? [one()] : [one(), one()];
}

test('under 300 drawn faults every lamp draws what its law says at its volts', () => {
  const feed = feedNamed('no-supply');
  const on = ['headlamps', 'parking', 'key-run', 'ignition', 'stop', 'dome', 'charge-lamp'];
  const errors = Array.from({ length: 300 }, (_none, seed) => {
    const changes = drawnFaults(seed);
    const state = solveFeed(feed, { on }, changes);
    const network = networkOf(feed, { on }, state.regime, changes);
    const again = value(solveNetwork(network));
    return Math.max(
      ...Object.keys(feed.stations).map((id) => apart(again.volts.get(id), state.volts(id))),
      ...[...state.regime.lamps.keys()].map((id) => {
        const load = feed.loads.find((each) => each.id === id)!;
        const volts = state.volts(load.from) - state.volts(load.to);
        const own = 'at' in load.takes ? load.takes.at : NaN;
        const amps = 'amps' in load.takes ? load.takes.amps : NaN;
        const wanted = lampAmps({ ohms: own / amps, rated: own }, volts);
        return 'amps' in load.takes ? apart(state.amps(id), wanted) : 0;
      }),
    );
  });

  expect(Math.max(...errors)).toBeLessThan(1e-8);
});
