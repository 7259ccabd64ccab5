/*
 * Times of the feed path, printed. Run by hand: node tests/bench/feed.ts
 * Each figure is the median of several runs in one process, in milliseconds.
 */
import { makeEvidence } from '../../src/core/feed/evidence.ts';
import type { Network } from '../../src/core/feed/network.ts';
import { check, feedNamed, solveNetwork, value } from '../core/feed/build.ts';
import type { FeedName } from '../core/feed/build.ts';
import { gridNetwork, ladderNetwork } from '../core/feed/large-network.ts';
import { loopSpans, searched } from '../core/feed/search.ts';

const print = (line: string): void => {
  process.stdout.write(`${line}\n`);
};

function medianOf(runs: number, work: () => void): number {
  work();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.toSorted((one, other) => one - other)[Math.floor(runs / 2)] ?? NaN;
}

function sizes(name: string, make: (nodes: number) => Network): void {
  for (const nodes of [250, 500, 1000, 2000, 4000]) {
    const network = make(nodes);
    const time = medianOf(9, () => void value(solveNetwork(network)));
    print(
      `${name.padEnd(8)} ${String(nodes).padStart(5)} nodes ${time.toFixed(2).padStart(8)} ms ${((1000 * time) / nodes).toFixed(2).padStart(7)} us a node`,
    );
  }
}

function evidence(): void {
  const feed = feedNamed('no-supply');
  const causes = Object.fromEntries(
    feed.spans
      .slice(0, 15)
      .map(({ from, to }) => [`${from}-${to}`, { span: [from, to], fault: 'bad' }] as const),
  );
  const bands = [{ from: 11.7 }, { from: 5, below: 11.7 }, { below: 5 }];
  const stations = Object.keys(feed.stations).slice(0, 15);
  const all = (of = makeEvidence()) => {
    for (const station of stations)
      value(of(feed, check({ station, load: ['headlamps', 'parking'] }), bands, causes));
  };
  const kept = makeEvidence();
  print(`evidence, 15 checks by 15 causes: new ${medianOf(5, () => all()).toFixed(1)} ms`);
  all(kept);
  print(
    `evidence, 15 checks by 15 causes: solved before ${medianOf(5, () => all(kept)).toFixed(1)} ms`,
  );
}

/** Probes of the advised search beside going along the loop from the battery, a fault in each span in turn. */
function search(name: FeedName, on: readonly string[], load: string): void {
  const feed = feedNamed(name);
  const setting = { on };
  const spans = loopSpans(feed, setting, load);
  const each = (minutes: ((station: string) => number) | undefined) =>
    spans.map((span) =>
      searched(
        { feed, setting, load, ...(minutes === undefined ? {} : { minutes }) },
        span,
        Infinity,
      ),
    );
  const mean = (amounts: readonly number[]) =>
    (amounts.reduce((sum, amount) => sum + amount, 0) / amounts.length).toFixed(2);
  const [even, own] = [each(() => 1), each(undefined)];
  const found = own.filter((one, at) => one.found === spans[at]).length;
  // Along the loop every station up to the fault is read, the post included.
  const along = spans.map((_span, at) => Math.min(at + 2, spans.length));
  print(
    `${name}: ${spans.length} spans, found ${found}; probes: half split ${mean(even.map(({ probes }) => probes))}, by minutes ${mean(own.map(({ probes }) => probes))} (${mean(own.map(({ minutes }) => minutes))} min), along the loop ${mean(along)}`,
  );
}

sizes('ladder', ladderNetwork);
sizes('grid', gridNetwork);
evidence();
search('no-supply', ['headlamps', 'parking', 'key-run'], 'headlamp-left');
search('crank', ['key-run', 'key-start', 'relay-coil'], 'relay-coil');
search('headlamp', ['headlamps', 'parking'], 'headlamp-left');
