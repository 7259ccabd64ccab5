import { at } from '../at.ts';
import { ladderOf, type Ladder } from '../feed/ladder.ts';
import type { Located } from '../feed/located/locate.ts';
import { nextProbe, type ProbeWish } from '../feed/probe.ts';
import { spanBetween, spanId, type Setting } from '../feed/path.ts';
import {
  complaintLoads,
  locateAll,
  observedByLoads,
  type Observed,
} from '../feed/located/observed.ts';
import { heldAgainst } from '../feed/located/suspicion.ts';
import { currentLeg, type Finding, type Story } from '../session/story.ts';
import { convert } from '../trade/units/units.ts';
import type { Feed } from '../tree/feed-model.ts';
import { unlisted, type Check, type Tree } from '../tree/model.ts';

/** The feed path as the session knows it: the ladder of one load, with where the fault lies. */
export type FeedView = {
  readonly ladder: Ladder;
  readonly located: Located;
  /** Where the probe goes next, by names: at one station, across two, or nowhere. */
  readonly next: readonly string[];
  /** Name of the cause on the path that is named or leads, where no volts show it. */
  readonly unshown: string | undefined;
};

/** What all findings say at the same moment: the page says nothing else. */
export type Leads = {
  /** Chance of each cause and of `unlisted`, from 0 to 1; one not named has none. */
  readonly chances: ReadonlyMap<string, number>;
  /** Checks that are advised, the best first. */
  readonly ranked: readonly string[];
};

/**
 * The ladder of a story whose tree has a feed path; undefined where it has none. Without leads the
 * volts speak alone.
 */
export function feedView(story: Story, leads?: Leads): FeedView | undefined {
  const { tree } = currentLeg(story);
  const { feed } = tree;
  if (feed === undefined) return undefined;
  const groups = observedByLoads(feed, observedIn(story));
  const last = groups.at(-1);
  const setting = last?.setting ?? { on: complaintLoads(tree, feed) };
  const places = placesOf(tree, leads);
  const found = locateAll(feed, groups);
  const located =
    leads === undefined
      ? found
      : heldAgainst(found, {
          of: (span) => places.get(span) ?? 0,
          unlisted: leads.chances.get(unlisted) ?? 0,
        });
  const load = loadFor(feed, setting.on);
  const wish = { load, weights: weightsOf(feed, places) };
  const next = probeNow(story, leads, { feed, setting, located, wish });
  const ladder = ladderOf(feed, setting, {
    load,
    readings: last?.readings ?? [],
    otherwise: groups.slice(0, -1).flatMap(({ readings }) => readings),
    located,
    next,
  });
  if (ladder.kind === 'bad') return undefined;
  return {
    ladder: ladder.value,
    located,
    next: next.map((id) => feed.stations[id]?.name ?? id),
    unshown: unshownCause(story, leads, located),
  };
}

/** What was read on the path since the last repair. */
function observedIn(story: Story): readonly Observed[] {
  const { checks } = currentLeg(story).tree;
  const repaired = story.repairs.at(-1)?.n ?? 0;
  return story.findings
    .filter(({ n }) => n > repaired)
    .flatMap((finding): Observed[] => {
      const check = checks[finding.check];
      if (check?.feed === undefined || finding.reading === undefined) return [];
      const judged = { feed: check.feed, volts: volts(finding.reading) };
      return [...firstOfTwo(check, finding), judged];
    });
}

/**
 * Of two readings whose difference is judged, the first: it was taken at the station to the
 * battery's negative post, so that the drop tells the volts at the other end as well.
 */
function firstOfTwo({ judge, feed }: Check, { readings }: Finding): readonly Observed[] {
  const first = readings?.at(0);
  if (judge !== 'difference' || feed?.against === undefined) return [];
  if (first === undefined || 'beyond' in first) return [];
  const { station, load, reads } = feed;
  return [{ feed: { station, load, reads }, volts: volts(first) }];
}

const volts = ({ value, unit }: { value: number; unit: string }): number =>
  convert(value, unit, 'V');

/** The load whose loop is drawn: the first that is switched on, as the names go. */
function loadFor(feed: Feed, on: readonly string[]): string {
  const named = on.flatMap((name) => feed.loads.filter((load) => (load.with ?? load.id) === name));
  return (named[0] ?? at(feed.loads, 0)).id;
}

/** The span that a cause sits on; nothing for one that sits on none. */
function spanOf({ causes, feed }: Tree, cause: string): string | undefined {
  const ends = causes[cause]?.span;
  const span = ends && feed && spanBetween(feed, ends);
  return span && spanId(span);
}

/** Spans by the chances of the causes that sit on them: as the leads say, else as they are usual. */
function placesOf(tree: Tree, leads: Leads | undefined): ReadonlyMap<string, number> {
  const places = new Map<string, number>();
  for (const [id, { odds }] of Object.entries(tree.causes)) {
    const span = spanOf(tree, id);
    const chance = leads === undefined ? odds / 100 : (leads.chances.get(id) ?? 0);
    if (span !== undefined) places.set(span, (places.get(span) ?? 0) + chance);
  }
  return places;
}

/** What a span counts in the search beside the chances of its causes: a little where none is named. */
const unnamed = 0.01;

const weightsOf = (feed: Feed, places: ReadonlyMap<string, number>): Record<string, number> =>
  Object.fromEntries(
    feed.spans.map((span) => [spanId(span), unnamed + (places.get(spanId(span)) ?? 0)]),
  );

type Search = {
  readonly feed: Feed;
  readonly setting: Setting;
  readonly located: Located;
  readonly wish: ProbeWish;
};

/**
 * The stations to read next: what the step on the walk reads, else what the best advised check on the
 * path does; only where the tree has no such check, what parts the suspects best. Nothing once a cause
 * is named, and nothing when the walk ends.
 */
function probeNow(
  story: Story,
  leads: Leads | undefined,
  { feed, setting, located, wish }: Search,
): readonly string[] {
  const { due } = story;
  if (due.kind !== 'check' && due.kind !== 'exhausted') return [];
  const { checks } = currentLeg(story).tree;
  const asked = due.kind === 'check' ? [due.check] : [];
  const [read] = [...asked, ...(leads?.ranked ?? [])].flatMap((id) => readBy(checks[id]));
  if (read !== undefined) return read;
  const probe = nextProbe(feed, setting, located, wish);
  return probe.kind === 'good' && probe.value.kind === 'probe' ? [probe.value.station] : [];
}

/** The stations that a check puts the probe to; none for one that reads no volts on the path. */
function readBy(check: Check | undefined): readonly (readonly string[])[] {
  if (check?.feed?.reads !== 'volts') return [];
  const { station, against } = check.feed;
  if (against === undefined) return [[station]];
  return [check.judge === 'difference' ? [against] : [station, against]];
}

/** From this chance on a cause is what all findings speak for. */
const likely = 0.5;

/** The cause that is named, or that leads, where the volts read do not put the fault at its place. */
function unshownCause(
  story: Story,
  leads: Leads | undefined,
  { faults }: Located,
): string | undefined {
  const { tree } = currentLeg(story);
  const { due } = story;
  const [leader] = [...(leads?.chances ?? [])].filter(([, chance]) => chance >= likely);
  const cause = due.kind === 'named' || due.kind === 'repair' ? due.cause : leader?.[0];
  const span = cause === undefined ? undefined : spanOf(tree, cause);
  if (cause === undefined || span === undefined) return undefined;
  const shown = faults.some(({ stretch }) => stretch.spans.includes(span));
  return shown ? undefined : tree.causes[cause]?.name;
}
