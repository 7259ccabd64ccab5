import { at } from '../at.ts';
import { ladderOf, type Ladder, type Rung } from '../feed/ladder.ts';
import { locate, type Located, type Stretch } from '../feed/locate.ts';
import { nextProbe } from '../feed/probe.ts';
import { spanBetween, spanId } from '../feed/path.ts';
import { complaintLoads, observedTogether, type Observed } from '../feed/observed.ts';
import { currentLeg, type Finding, type Story } from '../session/story.ts';
import { convert, showReading } from '../trade/units/units.ts';
import type { Feed } from '../tree/feed-model.ts';
import type { Check, Tree } from '../tree/model.ts';

/** The feed path as the session knows it: the ladder of one load, with where the fault lies. */
export type FeedView = {
  readonly ladder: Ladder;
  readonly located: Located;
  /** The best next station, by name. */
  readonly next: string | undefined;
};

/** Chance of each cause now, if it has been worked out: it weighs where to probe next. */
export type Chances = ReadonlyMap<string, number>;

/** The ladder of a story whose tree has a feed path; undefined where it has none. */
export function feedView(story: Story, chances: Chances = new Map()): FeedView | undefined {
  const { tree } = currentLeg(story);
  const { feed } = tree;
  if (feed === undefined) return undefined;
  const repaired = story.repairs.at(-1)?.n ?? 0;
  const observed = story.findings
    .filter(({ n }) => n > repaired)
    .flatMap((finding): Observed[] => {
      const check = tree.checks[finding.check];
      if (check?.feed === undefined || finding.reading === undefined) return [];
      const judged = { feed: check.feed, volts: volts(finding.reading) };
      return [...firstOfTwo(check, finding), judged];
    });
  const { setting, readings, drops } = observedTogether(feed, observed) ?? {
    setting: { on: complaintLoads(tree, feed) },
    readings: [],
    drops: [],
  };
  const located = locate(feed, setting, readings, drops);
  const load = loadFor(feed, setting.on);
  const wish = { load, weights: weightsOf(tree, feed, chances) };
  const probe = nextProbe(feed, setting, located, wish);
  const next =
    probe.kind === 'good' && probe.value.kind === 'probe' ? probe.value.station : undefined;
  const ladder = ladderOf(feed, setting, {
    load,
    readings,
    located,
    next,
  });
  return ladder.kind === 'bad'
    ? undefined
    : { ladder: ladder.value, located, next: next && feed.stations[next]?.name };
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

/** Spans weighed by the causes that sit on them; a span no cause is named for counts a little. */
function weightsOf(tree: Tree, feed: Feed, chances: Chances): Record<string, number> {
  const weights: Record<string, number> = Object.fromEntries(
    feed.spans.map((span) => [spanId(span), 0.01]),
  );
  for (const [id, cause] of Object.entries(tree.causes)) {
    const span = cause.span && spanBetween(feed, cause.span);
    if (span !== undefined)
      weights[spanId(span)] = (weights[spanId(span)] ?? 0) + (chances.get(id) ?? cause.odds / 100);
  }
  return weights;
}

/** All rungs in the order of the current. */
export const rungsOf = ({ supply, ground }: Ladder): readonly Rung[] => [...supply, ...ground];

/** How the span before a rung is drawn: sound, bad, proved not open, or nothing known. */
export function spanMark(stretch: Stretch | undefined): '─' | '╳' | '┄' | '╌' {
  if (stretch === undefined) return '╌';
  if (stretch.verdict === 'bad' || stretch.verdict === 'wrong') return '╳';
  return stretch.verdict === 'idle' ? '┄' : '─';
}

/** Stations shown in one line, about the place that matters now. */
const shownBefore = 4;
const shownAfter = 3;

/** One line: `battery 12.6 ─ stud 12.6 ╳ bulkhead 0.2 ╌ ammeter ?`, about the place that matters. */
export function ladderLine({ ladder, located }: FeedView): string {
  const rungs = rungsOf(ladder);
  const at = (test: (rung: Rung) => boolean): number => rungs.findLastIndex(test);
  const bad = at(({ station }) => station === located.faults[0]?.stretch.to);
  const next = at(({ mark }) => mark === 'next');
  const read = at(({ found }) => found !== undefined);
  const focus = Math.max(0, bad >= 0 ? bad : next >= 0 ? next : read);
  const most = rungs.length - shownBefore - shownAfter - 1;
  const from = Math.max(0, Math.min(focus - shownBefore, most));
  const shown = rungs.slice(from, from + shownBefore + shownAfter + 1);
  const line = shown.map((rung, index) => {
    const joint = index === 0 ? '' : ` ${spanMark(rung.span?.stretch)} `;
    return `${joint}${rung.short}${foundWords(rung)}`;
  });
  const more = from + shown.length < rungs.length ? ' …' : '';
  return `${from > 0 ? '… ' : ''}${line.join('')}${more}`;
}

const foundWords = ({ found, mark }: Rung): string =>
  found === undefined ? (mark === 'next' ? ' ?' : '') : ` ${found.toFixed(found < 1 ? 2 : 1)}`;

/** The whole ladder, a row a station: the way the current goes, the load between feed and ground. */
export function ladderLines(view: FeedView): readonly string[] {
  const { supply, ground, load } = view.ladder;
  return [
    ...whereLines(view),
    '  station                    found   sound  lost on the way here',
    ...supply.map(rungLine),
    `      [ load: ${load.name} ]`,
    ...ground.map(rungLine),
    ...([...supply, ...ground].some(({ branches }) => branches.length > 0)
      ? ['+: other consumers are fed from here.']
      : []),
  ];
}

const markWords = { read: '  ', wrong: '? ', next: '> ', unread: '  ' } as const;

/** Columns of a station's name: with the numbers behind it a line fits a window of 60 columns. */
const nameWidth = 26;

function rungLine({ name, found, sound, span, mark, branches }: Rung): string {
  const read = found === undefined ? '-' : showVolts(found);
  const branch = branches.length === 0 ? '' : ' +';
  const called = `${shortened(name, nameWidth - branch.length)}${branch}`;
  return `${markWords[mark]}${called.padEnd(nameWidth)} ${read.padStart(5)}  ${showVolts(sound).padStart(6)}  ${lostWords(span)}`;
}

/** A name cut in its middle: two sides of one part differ at the end. */
function shortened(name: string, width: number): string {
  if (name.length <= width) return name;
  const end = Math.floor((width - 1) / 2);
  return `${name.slice(0, width - 1 - end).trimEnd()}…${name.slice(-end).trimStart()}`;
}

const showVolts = (value: number): string => value.toFixed(2);

const verdictWords = {
  sound: '─ sound',
  bad: '╳ BAD',
  wrong: '╳ one is wrong',
  idle: '┄ not open',
} as const;

function lostWords(span: Rung['span']): string {
  if (span === undefined) return '';
  if (span.stretch === undefined) return '╌ not known';
  return `${verdictWords[span.stretch.verdict]}: ${showVolts(span.stretch.drop)} V`;
}

/** Where the excess lies, in sentences: also what a screen reader says. */
export function whereLines({ located, ladder, next }: FeedView): readonly string[] {
  const nameOf = (id: string): string =>
    rungsOf(ladder).find(({ station }) => station === id)?.name ?? id;
  const { faults, wrong } = located;
  return [
    ...wrong.map(
      ({ from, to }) =>
        `One of these two readings is wrong: ${nameOf(from)}, ${nameOf(to)}. Further on cannot be higher.`,
    ),
    ...(faults.length === 0 ? ['No stretch loses more than it may so far.'] : []),
    ...faults.flatMap(({ stretch }, rank) => faultLines(stretch, rank, nameOf)),
    ...(next === undefined ? [] : [`Probe next: ${next}.`]),
  ];
}

/** One fault: where it lies, what it loses, and a caution where it is hot; `rank` 0 is the worst. */
function faultLines(bad: Stretch, rank: number, nameOf: (id: string) => string): readonly string[] {
  const lost = `${showReading(bad.drop, 'V')} are lost there, a sound stretch loses ${showReading(bad.sound, 'V')}`;
  return [
    `${rank === 0 ? 'The fault' : 'Another fault'} lies between ${nameOf(bad.from)} and ${nameOf(bad.to)}: ${lost}${ohmsWords(bad)}.`,
    ...(bad.watts > 5
      ? [
          `! Heat: about ${Math.round(bad.watts)} W in one joint. It can burn you and the harness; key off while you look.`,
        ]
      : []),
  ];
}

const ohmsWords = ({ ohms, soundOhms }: Stretch): string =>
  Number.isFinite(ohms) && ohms > 0
    ? ` (${showReading(ohms, 'ohm')} in place of ${showReading(soundOhms, 'ohm')})`
    : ' (open, or as good as)';
