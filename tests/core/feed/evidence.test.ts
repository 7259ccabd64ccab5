import { expect, test } from 'vitest';
import { makeEvidence } from '../../../src/core/feed/evidence.ts';
import type { CheckRows } from '../../../src/core/feed/evidence.ts';
import type { PathCause } from '../../../src/core/feed/fault.ts';
import { spanId } from '../../../src/core/feed/path.ts';
import type { Change } from '../../../src/core/feed/path.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import { makeMemo, viewOf } from '../../../src/core/feed/one-fault.ts';
import type { CheckFeed, Feed } from '../../../src/core/tree/feed-model.ts';
import { check, feedNamed, numbersFrom, problemCodes, value } from './build.ts';

const feed = feedNamed('no-supply');
const lamps = ['headlamps', 'parking'];
const bands = [{ from: 11.7 }, { from: 5, below: 11.7 }, { below: 5 }];

const causes = {
  link: { span: ['link-in', 'link-out'], fault: 'open' },
  bulkhead: { span: ['bulk-e', 'bulk-d'], fault: 'bad' },
  strap: { span: ['block', 'body'], fault: 'resistive' },
  ground: { span: ['block', 'clamp-neg'], fault: { milliohm: 100, sigma: 0, open: 0 } },
  flat: { fault: { battery: { volts: 11, spread: 0.4, milliohm: 150, sigma: 0.5 } } },
  failed: { fault: { battery: { volts: 12.4, spread: 0.1, milliohm: 1000, sigma: 0.8 } } },
} as const satisfies Record<string, PathCause>;

const evidenceOf = (use: CheckFeed, of: Readonly<Record<string, PathCause>> = causes): CheckRows =>
  value(makeEvidence()(feed, use, bands, of));

test('volts past an open link are dead, and full before it', () => {
  const before = evidenceOf(check({ station: 'stud', load: lamps }));
  const past = evidenceOf(check({ station: 'link-out', load: lamps }));

  expect(before.points).not.toHaveProperty('link');
  expect(past.points['link']).toEqual([0.005, 0.005, 0.99]);
});

test('a bad joint shows only past itself, and only with the lamps on', () => {
  const joint = { bulkhead: { span: ['bulk-e', 'bulk-d'], fault: 'resistive' } } as const;

  expect(evidenceOf(check({ station: 'bulk-e', load: lamps }), joint).points).toEqual({});
  expect(evidenceOf(check({ station: 'bulk-d' }), joint).points).toEqual({});
  expect(evidenceOf(check({ station: 'bulk-d', load: lamps }), joint).points['bulkhead']?.[0]).toBe(
    0.005,
  );
});

test('a bad ground is seen from the ground side, not on the feed', () => {
  const feedSide = evidenceOf(check({ station: 'lsw-b', load: lamps }));
  const drops = [{ below: 0.1 }, { from: 0.1, below: 0.5 }, { from: 0.5 }];
  const use = check({ station: 'block', load: lamps });
  const groundSide = value(makeEvidence()(feed, use, drops, causes));

  expect(feedSide.points).not.toHaveProperty('ground');
  // Worked: 100 milliohm there lift the block to 0.97 V.
  expect(groundSide.points['ground']).toEqual([0.005, 0.005, 0.99]);
});

test('a drop across the joint itself names it whatever the battery does', () => {
  const drops = [{ below: 0.1 }, { from: 0.1 }];
  const use = check({ station: 'bulk-e', against: 'bulk-d', load: lamps });

  const { points } = value(makeEvidence()(feed, use, drops, causes));

  expect(Object.keys(points)).toEqual(['bulkhead']);
});

test('with the ground lead off an ohmmeter finds the open joint and nothing else', () => {
  const ohms = [{ below: 1 }, { from: 1, below: 1000 }, { from: 1000 }];
  const use = check({ station: 'bulk-e', against: 'bulk-d', reads: 'ohms' });

  const { background, points } = value(makeEvidence()(feed, use, ohms, causes));

  expect(background[0]).toBeCloseTo(0.99, 12);
  expect(Object.keys(points)).toEqual(['bulkhead']);
  // The span's own share of open ones.
  expect(points['bulkhead']?.[2]).toBeCloseTo(0.4, 2);
});

test('every row adds up, proves nothing impossible and looks no healthier than the background', () => {
  const stations = ['post-pos', 'stud', 'bulk-d', 'am-a', 'lsw-b', 'block', 'body'];
  const rows = stations.flatMap((station) => {
    const { background, points } = evidenceOf(check({ station, load: lamps }));
    return [background, ...Object.values(points)].map((row) => ({ row, background }));
  });

  const totals = (row: readonly number[]) =>
    row.map((_chance, at) => row.slice(0, at + 1).reduce((sum, chance) => sum + chance, 0));
  expect(rows.length).toBeGreaterThan(stations.length);
  for (const { row, background } of rows) {
    expect(totals(row).at(-1)).toBeCloseTo(1, 12);
    expect(Math.min(...row)).toBeGreaterThanOrEqual(0.005 - 1e-12);
    totals(row).forEach((total, at) =>
      expect(total).toBeLessThanOrEqual(totals(background)[at]! + 1e-12),
    );
  }
});

const changes: readonly Change[] = feed.spans.flatMap((span): readonly Change[] => [
  ...[0.0005, 0.05, 2, 300].map((ohms): Change => ({ kind: 'ohms', part: spanId(span), ohms })),
  { kind: 'open', part: spanId(span) },
]);

test('changing one part by the short formula gives the volts of solving again', () => {
  const setting = { on: [...lamps, 'key-run', 'ignition'] };
  const memo = makeMemo();
  const worst = changes.map((change) => {
    const view = viewOf({ feed, setting, memo }, change);
    const solved = solveFeed(feed, setting, [change]);
    const apart = Object.keys(feed.stations).map((id) =>
      Math.abs(view.volts[view.circuit.nodes.get(id)!]! - solved.volts(id)),
    );
    return Math.max(...apart);
  });

  expect(Math.max(...worst)).toBeLessThan(1e-9);
});

/** A sound feed of its own: battery, joints and loads each drawn within their spread. */
function drawn(normal: () => number): Feed {
  const { joints, loads, volts } = feed.spread;
  const near = (amount: number, sigma: number) => amount * Math.exp(sigma * normal());
  return {
    ...feed,
    battery: {
      ...feed.battery,
      volts: feed.battery.volts + volts * normal(),
      milliohm: near(feed.battery.milliohm, joints),
    },
    spans: feed.spans.map((span) => ({
      ...span,
      joints: span.joints.map((joint) => ({
        ...joint,
        milliohm: near(joint.milliohm, joint.sigma ?? joints),
      })),
    })),
    loads: feed.loads.map((load) =>
      'amps' in load.takes
        ? { ...load, takes: { ...load.takes, amps: near(load.takes.amps, loads) } }
        : load,
    ),
  };
}

/** Box and Muller's way from even to normal numbers (from memory). */
function normalsFrom(seed: number): () => number {
  const next = numbersFrom(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

test.each([
  { what: 'volts, where the battery decides', use: { station: 'lsw-b' }, limit: 12.2 },
  {
    what: 'a drop, where the joints decide',
    use: { station: 'post-pos', against: 'lsw-b' },
    limit: 0.33,
  },
])('the background of $what is what 1,000 drawn sound vehicles show', ({ use, limit }) => {
  const normal = normalsFrom(20260411);
  const against = use.against ?? 'post-neg';
  const shown = Array.from({ length: 1000 }, () => {
    const { volts } = solveFeed(drawn(normal), { on: lamps });
    return volts(use.station) - volts(against) + feed.spread.meter * normal();
  });
  const share = shown.filter((volts) => volts >= limit).length / 1000;

  const evidence = makeEvidence()(
    feed,
    check({ ...use, load: lamps }),
    [{ from: limit }, { below: limit }],
    {},
  );

  // Two standard deviations of a share among 1,000 are 0.032.
  expect(Math.abs((value(evidence).background[0] ?? NaN) - share)).toBeLessThan(0.035);
});

test.each([
  { station: 'bulk-d', median: 0.06, sigma: 1.2 },
  { station: 'am-b', median: 0.3, sigma: 0.8 },
  { station: 'lsw-b', median: 2, sigma: 1.2 },
])(
  'at $station, $median ohm: the row is what 1,000 drawn vehicles show',
  ({ station, median, sigma }) => {
    const next = numbersFrom(20260411);
    // Box and Muller's way to normal numbers (from memory).
    const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const counts = [0, 0, 0];
    for (let vehicle = 0; vehicle < 1000; vehicle += 1) {
      const change: Change = {
        kind: 'ohms',
        part: 'bulk-e:bulk-d',
        ohms: median * Math.exp(sigma * normal()),
      };
      const shown =
        solveFeed(drawn(normal), { on: lamps }, [change]).volts(station) +
        feed.spread.meter * normal();
      counts[shown >= 11.7 ? 0 : shown >= 5 ? 1 : 2]! += 1;
    }

    const fault = { milliohm: median * 1000, sigma, open: 0 };
    const { points } = evidenceOf(check({ station, load: lamps }), {
      bulkhead: { span: ['bulk-e', 'bulk-d'], fault },
    });

    // Two and a half standard deviations of a count among 1,000.
    counts.forEach((count, at) =>
      expect(Math.abs((points['bulkhead']?.[at] ?? NaN) - count / 1000)).toBeLessThan(0.04),
    );
  },
);

test('what was solved for a feed is kept as long as the feed is', () => {
  let made = 0;
  const memo = makeMemo();
  const evidence = makeEvidence((of, key, make) =>
    memo(of, key, () => {
      made += 1;
      return make();
    }),
  );
  const use = check({ station: 'bulk-d', load: lamps });

  const first = evidence(feed, use, bands, causes);
  const after = made;
  const second = evidence(feed, check({ ...use, load: lamps.toReversed() }), bands, causes);

  expect(second).toEqual(first);
  expect(made).toBe(after);
});

test('a cause or check that names what the feed has not is told', () => {
  const evidence = makeEvidence()(feed, check({ station: 'attic' }), bands, {
    lost: { span: ['stud', 'attic'], fault: 'open' },
  });

  expect(problemCodes(evidence)).toEqual(['feed-unknown', 'feed-unknown']);
});

test('a cause without a place on the feed path has no row', () => {
  expect(evidenceOf(check({ station: 'stud', load: lamps }), { tank: {} }).points).toEqual({});
});
