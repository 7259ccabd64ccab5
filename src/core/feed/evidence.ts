import { bad, good } from '../problem.ts';
import type { Parsed } from '../problem.ts';
import { at } from '../at.ts';
import { nodeOf } from './network.ts';
import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import { bandChances, beside, raised } from './band.ts';
import type { Band, Shown } from './band.ts';
import { checkFeedUse } from './check-feed.ts';
import { waysOf } from './fault.ts';
import type { PathCause, Way } from './fault.ts';
import { battery } from './path.ts';
import type { Change, Setting } from './path.ts';
import { makeMemo, settingKey, viewOf } from './one-fault.ts';
import type { Memo, Question } from './one-fault.ts';
import { across, partIn, respond } from './view.ts';
import type { View } from './view.ts';

/** The rows a check needs: on a vehicle with none of these causes, and with one of them alone. */
export type CheckRows = {
  readonly background: readonly number[];
  /** Causes that this check cannot tell from none are left out. */
  readonly points: Readonly<Record<string, readonly number[]>>;
};

export type RowsOf = (
  feed: Feed,
  check: CheckFeed,
  bands: readonly Band[],
  causes: Readonly<Record<string, PathCause>>,
) => Parsed<CheckRows>;

/** A row this close to the background everywhere says nothing. */
const nothing = 1e-3;

/** Makes the function that works out evidence; what it has solved it keeps as long as the feed. */
export function makeEvidence(memo: Memo = makeMemo()): RowsOf {
  return (feed, check, bands, causes) => {
    const problems = checkFeedUse(feed, check, causes);
    if (problems.length > 0) return bad(...problems);
    const question: Question = { feed, setting: settingOf(check), memo };
    const background = raised(bandChances(bands, mixtureOf(question, check, undefined)));
    const points: Record<string, readonly number[]> = {};
    for (const [id, cause] of Object.entries(causes)) {
      const mixture = mixtureOf(question, check, cause);
      if (mixture.length === 0) continue;
      const row = beside(background, bandChances(bands, mixture));
      if (row.some((chance, band) => Math.abs(chance - at(background, band)) > nothing))
        points[id] = row;
    }
    return good({ background, points });
  };
}

/**
 * What the meter shows on a vehicle with this cause, or with none: the middle one of the ways the
 * cause may stand. Undefined for a cause without a place on the path.
 */
export function typicalReading(
  { feed, memo }: Pick<Question, 'feed' | 'memo'>,
  check: CheckFeed,
  cause: PathCause | undefined,
): number | undefined {
  const question: Question = { feed, setting: settingOf(check), memo };
  const ways = mixtureOf(question, check, cause).toSorted((one, other) => one.mean - other.mean);
  let passed = 0;
  return ways.find(({ weight }) => (passed += weight) >= 0.5)?.mean;
}

const settingOf = ({ load, reads }: CheckFeed): Setting =>
  // An ohmmeter's current leaves every filament cold.
  reads === 'ohms' ? { on: load, battery: 'out', filaments: 'cold' } : { on: load };

type Seen = { readonly view: View; readonly way: Pick<Way, 'weight' | 'volts'> & Partial<Way> };

function mixtureOf(
  question: Question,
  check: CheckFeed,
  cause: PathCause | undefined,
): readonly (Shown & { readonly weight: number })[] {
  const { feed, setting, memo } = question;
  const key = `views|${settingKey(setting)}|${JSON.stringify(cause ?? '')}`;
  const views = memo(feed, key, () => viewsOf(question, cause));
  return views.map(({ view, way }) => ({
    weight: way.weight,
    ...shownIn(feed, check, view, way),
  }));
}

function viewsOf(question: Question, cause: PathCause | undefined): readonly Seen[] {
  const { feed } = question;
  const ways: readonly (Pick<Way, 'weight' | 'volts'> & Partial<Way>)[] =
    cause === undefined ? [{ weight: 1, volts: feed.spread.volts }] : waysOf(feed, cause);
  return ways.map((way) => ({ view: viewOf(question, way.change), way }));
}

/**
 * What the meter shows: the mean from the circuit, and the spread of the meter, the battery's volts
 * and every sound part, each to first order. A part's share is its amps times (wa - wb) per unit of the
 * logarithm of its ohms, w being the answer to one ampere between the probes; since a log-normal has
 * its mean above its median, the mean moves too.
 */
function shownIn(feed: Feed, check: CheckFeed, view: View, way: Seen['way']): Shown {
  const against = check.against ?? feed.battery.negative;
  const ohms = check.reads === 'ohms';
  const { nodes, loose } = view.circuit;
  const ends = {
    from: nodeOf(nodes, check.station),
    to: nodeOf(nodes, against),
  };
  const faulty = faultyPart(way.change);
  const probe = respond(view, check.station, against);
  const source = ohms ? probe : view.volts;
  let mean = across(source, ends);
  let variance = (ohms ? feed.spread.meterOhms : feed.spread.meter) ** 2;
  if (!ohms) variance += (way.volts * across(view.perVolt, ends)) ** 2;
  for (const { id, spread } of loose) {
    const part = partIn(view, id);
    if (part === undefined || id === faulty) continue;
    // Its amps, times what one ampere pushed in across it does between the probes.
    const amps = part.siemens * (across(source, part) - part.volts);
    const share = amps * across(probe, part);
    variance += (spread.deviation * share) ** 2;
    mean += spread.lift * share;
  }
  return { mean, deviation: Math.sqrt(variance) };
}

/** The part a fault sits in: its ohms are the fault's, and no more those of a sound one. */
function faultyPart(change: Change | undefined): string | undefined {
  if (change === undefined) return undefined;
  return change.kind === 'battery' ? battery : change.part;
}
