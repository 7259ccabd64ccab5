import { locate } from '../../../src/core/feed/located/locate.ts';
import type { FeedReading } from '../../../src/core/feed/located/locate.ts';
import type { Change, Setting } from '../../../src/core/feed/path.ts';
import { nextProbe } from '../../../src/core/feed/probe.ts';
import { loopOf, routesOf, hopId } from '../../../src/core/feed/route.ts';
import { solveFeed } from '../../../src/core/feed/settle.ts';
import type { Feed } from '../../../src/core/tree/feed-model.ts';
import { value } from './build.ts';

export function loopSpans(feed: Feed, setting: Setting, load: string): readonly string[] {
  const ends = feed.loads.find(({ id }) => id === load)!;
  const { supply, ground } = loopOf(routesOf(feed, setting), ends);
  return [...supply, ...ground].map(hopId);
}

type Hunt = {
  readonly feed: Feed;
  readonly setting: Setting;
  readonly load: string;
  readonly minutes?: (station: string) => number;
};

export type Searched = {
  readonly found: string;
  readonly probes: number;
  readonly minutes: number;
};

/** Hides a fault in a span and follows the advice, with a meter that shows hundredths, to its end. */
export function searched(hunt: Hunt, span: string, ohms: number): Searched {
  const { feed, setting, ...wish } = hunt;
  const change: Change =
    ohms === Infinity ? { kind: 'open', part: span } : { kind: 'ohms', part: span, ohms };
  const faulty = solveFeed(feed, setting, [change]);
  const readings: FeedReading[] = [];
  let minutes = 0;
  for (let round = 0; round < 40; round += 1) {
    const located = locate(feed, setting, readings);
    const next = value(nextProbe(feed, setting, located, wish));
    if (next.kind !== 'probe')
      return {
        found: next.kind === 'clear' ? 'clear' : next.spans.join(' '),
        probes: readings.length,
        minutes,
      };
    minutes += next.minutes;
    const volts = Math.round(faulty.volts(next.station) * 100) / 100;
    readings.push({ station: next.station, volts });
  }
  return { found: 'never', probes: readings.length, minutes };
}
