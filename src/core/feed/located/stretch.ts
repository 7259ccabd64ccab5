import type { Feed } from '../../tree/feed-model.ts';
import { still } from '../flow.ts';
import type { Flow, Loss } from '../flow.ts';
import { spanOhms } from '../path.ts';
import { hopId, hopsBetween } from '../route.ts';
import type { Routes, Hop } from '../route.ts';
import { spreadsOf } from '../spread.ts';

/**
 * - `sound`: no more than a sound stretch may lose;
 * - `bad`: loses too much;
 * - `wrong`: the reading further on is the higher one, so one of the two is wrong;
 * - `idle`: hardly any current flowed, so nothing is proved but that it is not open;
 * - `doubtful`: loses too much by the volts alone, and all that was found speaks for something else;
 * - `suspect`: loses no more than it may by the volts alone, and all that was found speaks for it.
 */
type Verdict = 'sound' | 'bad' | 'wrong' | 'idle' | 'doubtful' | 'suspect';

/** What lies between two readings, counted the way the current goes. */
export type Stretch = {
  readonly from: string;
  readonly to: string;
  /** Span ids between them, in that order. */
  readonly spans: readonly string[];
  readonly drop: number;
  /** The drop of a sound stretch at these amps. */
  readonly sound: number;
  readonly excess: number;
  readonly amps: number;
  /** `Infinity` when the drop stands with no current: open, or as good as. */
  readonly ohms: number;
  readonly soundOhms: number;
  /** Heat where the excess lies. */
  readonly watts: number;
  readonly verdict: Verdict;
};

/** Amps below which a stretch that loses nothing is not proved sound. */
const telling = 0.5;
/** Standard deviations beyond which a drop is not put down to the meter or a sound joint. */
export const beyond = 2;

/** The path with certain things on, and what flows in it by all that was read. */
export type OnPath = {
  readonly feed: Feed;
  readonly flow: Flow;
  readonly routes: Routes;
};

/** Judges what is lost between two stations of one way. */
export function stretchOf(known: OnPath, { inner, outer, drop: dropOut }: Loss): Stretch {
  const { feed, flow, routes } = known;
  const hops = hopsBetween(routes, inner, outer);
  const outward = hops.map((hop) => flow.amps(hopId(hop)));
  const soundOut = hops.reduce((sum, hop) => sum + spanOhms(hop.span) * flow.amps(hopId(hop)), 0);
  // Where nothing flows, the way it would flow: outward, but home on the ground side. Where a charging
  // machine feeds both ways between the two, either end may be the higher one: the way of the excess.
  const home = feed.stations[outer]?.side === 'ground';
  const bothWays = outward.some((amps) => amps > still) && outward.some((amps) => amps < -still);
  const lost = bothWays ? dropOut - soundOut : soundOut;
  const forward = Math.abs(lost) > 1e-9 ? lost > 0 : !home;
  const turn = forward ? 1 : -1;
  const amps = Math.max(...outward.map(Math.abs));
  const drop = turn * dropOut;
  const sound = turn * soundOut;
  const excess = drop - sound;
  return {
    from: forward ? inner : outer,
    to: forward ? outer : inner,
    spans: (forward ? hops : hops.toReversed()).map(hopId),
    drop,
    sound,
    excess,
    amps,
    ohms: ohmsAt(drop, amps),
    soundOhms: hops.reduce((sum, hop) => sum + spanOhms(hop.span), 0),
    watts: Math.max(0, excess) * amps,
    verdict: verdictOn(known, hops, { drop, excess, amps, sound, bothWays }),
  };
}

function ohmsAt(drop: number, amps: number): number {
  if (amps > still) return drop / amps;
  return drop > 0.1 ? Infinity : 0;
}

type Lost = Pick<Stretch, 'drop' | 'excess' | 'amps' | 'sound'> & { readonly bothWays: boolean };

function verdictOn({ feed, flow }: OnPath, hops: readonly Hop[], loss: Lost): Verdict {
  const { meter, loads } = feed.spread;
  const meters = Math.SQRT2 * meter;
  if (!loss.bothWays && loss.drop < -beyond * meters) return 'wrong';
  const spreads = spreadsOf(feed);
  const each = hops.map((hop) => {
    const id = hopId(hop);
    return deviationOf(spreads, id) * spanOhms(hop.span) * flow.amps(id);
  });
  const doubt = Math.hypot(meters, loads * loss.sound, ...each);
  if (loss.excess > beyond * doubt) return 'bad';
  return loss.amps < telling ? 'idle' : 'sound';
}

function deviationOf(spreads: ReturnType<typeof spreadsOf>, span: string): number {
  const spread = spreads.get(span);
  if (spread === undefined) throw new Error(`The feed path has no span "${span}".`);
  return spread.deviation;
}
