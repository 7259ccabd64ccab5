import type { Feed } from '../tree/feed-model.ts';
import { battery, spanId, spanOhms } from './path.ts';

/**
 * How far each sound part's ohms may differ, as a standard deviation of the logarithm: loads and the
 * battery by the feed's own figures, a span by its joints alone, since wire keeps to its gauge.
 */
export function spreadsOf(feed: Feed): ReadonlyMap<string, number> {
  const { joints, loads } = feed.spread;
  const spans = feed.spans.map((span): readonly [string, number] => {
    const each = span.joints.map(({ milliohm, sigma }) => ((sigma ?? joints) * milliohm) / 1000);
    return [spanId(span), Math.hypot(...each) / spanOhms(span)];
  });
  return new Map([
    [battery, joints],
    ...feed.loads.map(({ id }): readonly [string, number] => [id, loads]),
    ...spans,
  ]);
}
