import * as z from 'zod';
import { expect, test } from 'vitest';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { feedNamed, apart, readFixture } from './build.ts';

/**
 * Volts worked beforehand from the same lengths and joints by another nodal solver, rounded to
 * 0.01 V; the figures that went in are common practice, no source. Span ohms here come from gauge
 * and length, there from rounded milliohms: 0.02 V covers both roundings.
 */
const Table = z.array(
  z.object({
    table: z.string(),
    feed: z.enum(['no-supply', 'crank', 'charging', 'headlamp']),
    on: z.array(z.string()),
    rows: z.array(
      z.object({
        state: z.string(),
        filaments: z.enum(['hot', 'cold']),
        changes: z.array(
          z.union([
            z.object({ kind: z.literal('ohms'), part: z.string(), ohms: z.number() }),
            z.object({ kind: z.literal('open'), part: z.string() }),
            z.object({ kind: z.literal('battery'), volts: z.number(), ohms: z.number() }),
          ]),
        ),
        off: z.array(z.string()).default([]),
        pins: z.tuple([z.string(), z.string(), z.number()]),
        volts: z.record(z.string(), z.number()),
        amps: z.record(z.string(), z.number()),
      }),
    ),
  }),
);

const rows = Table.parse(readFixture('worked-volts.json')).flatMap(({ rows: states, ...table }) =>
  states.map((state) => ({ ...table, ...state })),
);

/** The feed is printed to 0.1 A and the starter to 1 A; the charge is a small difference of large amps. */
const within: Record<string, number> = { 'link-out:bulk-e': 0.1, starter: 1, '.battery': 0.4 };

test('all four tables are there', () => {
  expect(rows).toHaveLength(48);
});

test.each(rows)('$table; $state: every station as worked', (row) => {
  const on = row.on.filter((id) => !row.off.includes(id));
  const [plus, minus, across] = row.pins;

  const state = solveFeed(feedNamed(row.feed), { on, filaments: row.filaments }, row.changes);

  for (const [station, volts] of Object.entries(row.volts))
    expect(apart(state.volts(station), volts)).toBeLessThan(0.02);
  expect(apart(state.volts(plus) - state.volts(minus), across)).toBeLessThan(0.02);
  for (const [part, amps] of Object.entries(row.amps))
    expect(apart(state.amps(part), amps)).toBeLessThan(within[part] ?? 0);
});
