import type { Feed, Span } from '../tree/feed-model.ts';
import { closed, spanId } from './path.ts';
import type { Setting } from './path.ts';

/** One span outward from a battery post, and the station at its far end. */
export type Hop = { readonly span: Span; readonly inner: string; readonly outer: string };

/** From every station the hop that leads to it from its battery post. */
export type Routes = ReadonlyMap<string, Hop>;

/** The shortest way (in spans) from the battery posts to every station, by spans that conduct. */
export function routesOf(feed: Feed, setting: Setting): Routes {
  const { positive, negative } = feed.battery;
  const hops = new Map<string, Hop>();
  const seen = new Set([positive, negative]);
  const line = [positive, negative];
  const spans = feed.spans.filter((span) => closed(span, setting));
  for (const inner of line)
    for (const span of spans) {
      if (span.from !== inner && span.to !== inner) continue;
      const outer = span.from === inner ? span.to : span.from;
      if (seen.has(outer)) continue;
      seen.add(outer);
      hops.set(outer, { span, inner, outer });
      line.push(outer);
    }
  return hops;
}

/** The hops from the battery post out to a station; none for a post. */
export function wayTo(routes: Routes, station: string): readonly Hop[] {
  const hops: Hop[] = [];
  for (let hop = routes.get(station); hop !== undefined; hop = routes.get(hop.inner))
    hops.push(hop);
  return hops.toReversed();
}

/** Hops between a station and one nearer to the post on the same way. */
export function hopsBetween(routes: Routes, inner: string, outer: string): readonly Hop[] {
  const way = wayTo(routes, outer);
  const after = way.findIndex((hop) => hop.inner === inner);
  return after < 0 ? [] : way.slice(after);
}

/** The loop of one load: from the positive post out to it, and from it back to the negative post. */
export type Loop = { readonly supply: readonly Hop[]; readonly ground: readonly Hop[] };

export function loopOf(routes: Routes, { from, to }: { from: string; to: string }): Loop {
  return { supply: wayTo(routes, from), ground: wayTo(routes, to).toReversed() };
}

export const hopId = ({ span }: Hop): string => spanId(span);
