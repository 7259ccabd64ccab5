import { at } from '../at.ts';
import type { BadJoint, Fault, Feed } from '../tree/feed-model.ts';
import { spanBetween, spanId, spanOhms } from './path.ts';
import type { Change } from './path.ts';

/** The part of a cause that the feed path knows. */
export type PathCause = {
  readonly span?: readonly [string, string] | undefined;
  readonly fault?: Fault | undefined;
};

/** One way a cause may stand, and how likely that is among its ways. */
export type Way = {
  readonly weight: number;
  readonly change: Change;
  /** Standard deviation of the battery's own volts in this way. */
  readonly volts: number;
};

/** A bad joint of which nothing is said: half an ohm, give or take a factor of three. No source. */
const anyBad: BadJoint = { milliohm: 500, sigma: 1.2, open: 0.3 };

/**
 * The ways of a cause on the feed path, their weights adding up to 1; none when the cause has no
 * place on it. Ohms are log-normal; they stand in place of the sound span's and are never less.
 */
export function waysOf(feed: Feed, { span: ends, fault }: PathCause): readonly Way[] {
  if (fault === undefined) return [];
  const { volts } = feed.spread;
  if (typeof fault === 'object' && 'battery' in fault) {
    const { battery } = fault;
    return normalPoints.map(({ z, weight }) => ({
      weight,
      volts: battery.spread,
      change: {
        kind: 'battery',
        volts: battery.volts,
        ohms: (battery.milliohm / 1000) * Math.exp(battery.sigma * z),
      },
    }));
  }
  if (typeof fault === 'object' && 'load' in fault) {
    const { load, ohms, sigma } = fault;
    return normalPoints.map(({ z, weight }) => ({
      weight,
      volts,
      change: { kind: 'ohms', part: load, ohms: ohms * Math.exp(sigma * z) },
    }));
  }
  const span = ends === undefined ? undefined : spanBetween(feed, ends);
  if (span === undefined) return [];
  const bad = badOf(fault, span.bad ?? anyBad);
  const part = spanId(span);
  const sound = spanOhms(span);
  const resistive = normalPoints.map(({ z, weight }): Way => {
    const ohms = Math.max(sound, (bad.milliohm / 1000) * Math.exp(bad.sigma * z));
    return { weight: weight * (1 - bad.open), volts, change: { kind: 'ohms', part, ohms } };
  });
  const open: Way = { weight: bad.open, volts, change: { kind: 'open', part } };
  return [...(bad.open < 1 ? resistive : []), ...(bad.open > 0 ? [open] : [])];
}

function badOf(fault: BadJoint | 'open' | 'resistive' | 'bad', usual: BadJoint): BadJoint {
  if (fault === 'open') return { ...usual, open: 1 };
  if (fault === 'resistive') return { ...usual, open: 0 };
  return fault === 'bad' ? usual : fault;
}

/**
 * Points and weights for a mean over the standard normal: the trapezoid rule from -4 to 4 in steps
 * of 1/8. Gauss-Hermite would need fewer points for a smooth integrand, but what is averaged here is
 * nearly a step (a band is met or not), where even steps are the surer rule: on the default feeds
 * every row is within 0.0012 of the one by six times as many points.
 */
const normalPoints: readonly { readonly z: number; readonly weight: number }[] = (() => {
  const points = Array.from({ length: 65 }, (_none, point) => (point - 32) / 8);
  const heights = points.map((z) => Math.exp((-z * z) / 2));
  const total = heights.reduce((sum, height) => sum + height, 0);
  return points.map((z, point) => ({ z, weight: at(heights, point) / total }));
})();
