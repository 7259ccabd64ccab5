import { good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import type { Feed } from '../tree/feed-model.ts';
import { flowFrom, still, tapOf } from './flow.ts';
import type { Flow } from './flow.ts';
import { spanOhms } from './path.ts';
import type { Setting } from './path.ts';
import { routesOf, stepId, stepsBetween, wayTo } from './route.ts';
import type { Routes, Step } from './route.ts';
import { spreadsOf } from './spread.ts';

/** Volts at a station to the battery's negative post. */
export type FeedReading = { readonly station: string; readonly volts: number };

/**
 * - `sound`: no more than a sound stretch may lose;
 * - `bad`: loses too much;
 * - `wrong`: the reading further on is the higher one, so one of the two is wrong;
 * - `idle`: hardly any current flowed, so nothing is proved but that it is not open.
 */
export type Verdict = 'sound' | 'bad' | 'wrong' | 'idle';

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

export type Located = {
  readonly stretches: readonly Stretch[];
  /** The stretch that loses most beyond its due. */
  readonly bad: Stretch | undefined;
  /** Spans that lie in every bad stretch, or in the worst if none lies in all: one is the place. */
  readonly suspects: readonly string[];
  /** Pairs of readings that cannot both be right. */
  readonly wrong: readonly Stretch[];
  readonly battery:
    | { readonly found: number; readonly sound: number; readonly low: boolean }
    | undefined;
};

/** Amps below which a stretch that loses nothing is not proved sound. */
const telling = 0.5;
/** Standard deviations beyond which a drop is not put down to the meter or a sound joint. */
const beyond = 2;

/** Judges what lies between readings that were all taken with the same things switched on. */
export function locate(
  feed: Feed,
  setting: Setting,
  readings: readonly FeedReading[],
): Parsed<Located> {
  const routes = routesOf(feed, setting);
  const { positive, negative } = feed.battery;
  // Last one counts where a station was read twice. The black lead's own station is 0 V.
  const read = new Map([
    [negative, 0],
    ...readings.map(({ station, volts }): [string, number] => [station, volts]),
  ]);
  const flowing = flowFrom({ feed, setting }, routes, read);
  if (flowing.kind === 'bad') return flowing;
  const flow = flowing.value;
  const known: Known = { feed, flow, routes, read };
  const judged = stretchesOf({ ...known, read: withTaps(known, stretchesOf(known)) });
  const bad = judged
    .filter(({ verdict }) => verdict === 'bad')
    .toSorted((one, other) => other.excess - one.excess);
  const found = read.get(positive);
  return good({
    stretches: judged,
    bad: bad[0],
    suspects: sharedSpans(bad),
    wrong: judged.filter(({ verdict }) => verdict === 'wrong'),
    battery: found === undefined ? undefined : batteryAt(feed, found, flow.sound.volts(positive)),
  });
}

function sharedSpans(bad: readonly Stretch[]): readonly string[] {
  const [worst, ...others] = bad;
  const spans = worst?.spans ?? [];
  const shared = spans.filter((span) => others.every((other) => other.spans.includes(span)));
  return shared.length > 0 ? shared : spans;
}

/** What lies between each reading and the next one nearer to its battery post. */
function stretchesOf(known: Known): readonly Stretch[] {
  return [...known.read.keys()].flatMap((outer) => {
    const way = wayTo(known.routes, outer);
    const inner = way.findLast((step) => known.read.has(step.inner))?.inner;
    return inner === undefined ? [] : [stretchOf(known, inner, outer)];
  });
}

/**
 * A reading at the end of a branch that carries nothing is a reading where the branch leaves, if it
 * is a good one; a dead end may as well be a fault of the branch.
 */
function withTaps(known: Known, stretches: readonly Stretch[]): ReadonlyMap<string, number> {
  const { read, routes, flow } = known;
  const taps = [...read].flatMap(([tip, volts]) => {
    const last = routes.get(tip);
    const own = stretches.find(({ spans }) => last !== undefined && spans.includes(stepId(last)));
    if (own?.verdict !== 'sound' && own?.verdict !== 'idle') return [];
    return [[tapOf(routes, flow.sound, tip), volts] as const];
  });
  return new Map([...taps, ...read]);
}

function batteryAt(feed: Feed, found: number, sound: number): Located['battery'] {
  const doubt = Math.hypot(feed.spread.meter, feed.spread.volts);
  return { found, sound, low: sound - found > beyond * doubt };
}

type Known = {
  readonly feed: Feed;
  readonly flow: Flow;
  readonly routes: Routes;
  readonly read: ReadonlyMap<string, number>;
};

function stretchOf(known: Known, inner: string, outer: string): Stretch {
  const { feed, flow, routes, read } = known;
  const steps = stepsBetween(routes, inner, outer);
  const outward = steps.map((step) => flow.amps(stepId(step)));
  const soundOut = steps.reduce(
    (sum, { span }, at) => sum + spanOhms(span) * (outward[at] ?? 0),
    0,
  );
  const dropOut = (read.get(inner) ?? 0) - (read.get(outer) ?? 0);
  // Where nothing flows, the way it would flow: outward, but home on the ground side.
  const home = feed.stations[outer]?.side === 'ground';
  const forward = Math.abs(soundOut) > 1e-9 ? soundOut > 0 : !home;
  const turn = forward ? 1 : -1;
  const amps = Math.max(...outward.map(Math.abs));
  const drop = turn * dropOut;
  const sound = turn * soundOut;
  const excess = drop - sound;
  return {
    from: forward ? inner : outer,
    to: forward ? outer : inner,
    spans: (forward ? steps : steps.toReversed()).map(stepId),
    drop,
    sound,
    excess,
    amps,
    ohms: ohmsAt(drop, amps),
    soundOhms: steps.reduce((sum, step) => sum + spanOhms(step.span), 0),
    watts: Math.max(0, excess) * amps,
    verdict: verdictOn(known, steps, { drop, excess, amps, sound }),
  };
}

function ohmsAt(drop: number, amps: number): number {
  if (amps > still) return drop / amps;
  return drop > 0.1 ? Infinity : 0;
}

type Loss = Pick<Stretch, 'drop' | 'excess' | 'amps' | 'sound'>;

function verdictOn({ feed, flow }: Known, steps: readonly Step[], loss: Loss): Verdict {
  const { meter, loads } = feed.spread;
  const meters = Math.SQRT2 * meter;
  if (loss.drop < -beyond * meters) return 'wrong';
  const spreads = spreadsOf(feed);
  const each = steps.map((step) => {
    const id = stepId(step);
    return (spreads.get(id)?.deviation ?? 0) * spanOhms(step.span) * flow.amps(id);
  });
  const doubt = Math.hypot(meters, loads * loss.sound, ...each);
  if (loss.excess > beyond * doubt) return 'bad';
  return loss.amps < telling ? 'idle' : 'sound';
}
