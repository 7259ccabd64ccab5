import type { Feed } from '../tree/feed-model.ts';
import { battery, spanId, spanOhms } from './path.ts';

/** How sound parts differ from the figure given, in shares of that figure. */
export type Spread = {
  /** Standard deviation. */
  readonly deviation: number;
  /** How far the mean lies above the figure, which is the median. */
  readonly lift: number;
};

/** Of a log-normal with median 1: mean e^(σ²/2), variance e^σ²·(e^σ² - 1) (from memory). */
function logNormal(sigma: number): Spread {
  const grown = Math.exp(sigma ** 2);
  return { deviation: Math.sqrt(grown * (grown - 1)), lift: Math.sqrt(grown) - 1 };
}

/**
 * How far the ohms of each sound part may differ: loads and the battery by the feed's own figures, a
 * span by its joints alone, since wire keeps to its gauge.
 */
export function spreadsOf(feed: Feed): ReadonlyMap<string, Spread> {
  const { joints, loads } = feed.spread;
  const spans = feed.spans.map((span): readonly [string, Spread] => {
    const whole = spanOhms(span);
    const each = span.joints.map(({ milliohm, sigma }) => {
      const { deviation, lift } = logNormal(sigma ?? joints);
      const share = milliohm / 1000 / whole;
      return { deviation: share * deviation, lift: share * lift };
    });
    const deviation = Math.hypot(...each.map((joint) => joint.deviation));
    return [spanId(span), { deviation, lift: each.reduce((sum, joint) => sum + joint.lift, 0) }];
  });
  return new Map([
    [battery, logNormal(joints)],
    ...feed.loads.map(({ id }): readonly [string, Spread] => [id, logNormal(loads)]),
    ...spans,
  ]);
}
