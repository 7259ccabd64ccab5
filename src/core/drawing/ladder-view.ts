import type { Ladder, Rung } from '../feed/ladder.ts';
import type { Stretch } from '../feed/located/stretch.ts';
import { onMeter } from '../feed/meter.ts';
import { showReading } from '../trade/units/units.ts';
import type { FeedView } from './feed-view.ts';

/** All rungs in the order of the current. */
export const rungsOf = ({ supply, ground }: Ladder): readonly Rung[] => [...supply, ...ground];

/** How the span before a rung is drawn: by the verdict, or as nothing known. */
const spanMark = (stretch: Stretch | undefined): string =>
  stretch === undefined ? '╌' : marks[stretch.verdict];

const marks = { sound: '─', bad: '╳', wrong: '╳', idle: '┄', doubtful: '~', suspect: '~' } as const;

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

/** What was read with other things on stands in brackets. */
function foundWords({ found, otherwise, mark }: Rung): string {
  if (found !== undefined) return ` ${briefVolts(found)}`;
  const asked = mark === 'next' ? ' ?' : '';
  return otherwise === undefined ? asked : ` (${briefVolts(otherwise)})${asked}`;
}

const briefVolts = (volts: number): string => volts.toFixed(volts < 1 ? 2 : 1);

/** The whole ladder, a row a station: the way the current goes, the load between feed and ground. */
export function ladderLines(view: FeedView): readonly string[] {
  const { supply, ground, load } = view.ladder;
  const rungs = rungsOf(view.ladder);
  return [
    ...whereLines(view),
    '  station                      found  sound  lost to here',
    ...supply.map(rungLine),
    `      [ load: ${load.name} ]`,
    ...ground.map(rungLine),
    ...(rungs.some(({ branches }) => branches.length > 0)
      ? ['+: other consumers are fed from here.']
      : []),
    ...(rungs.some(({ otherwise }) => otherwise !== undefined)
      ? ['(12.60): read with other things on, or with nothing on.']
      : []),
  ];
}

const markWords = { read: '  ', wrong: '? ', next: '> ', unread: '  ' } as const;

/** Columns of a station's name: with the numbers behind it a line fits a window of 60 columns. */
const nameWidth = 26;

function rungLine(rung: Rung): string {
  const { name, sound, span, mark, branches } = rung;
  const read = readWords(rung);
  const branch = branches.length === 0 ? '' : ' +';
  const called = `${shortened(name, nameWidth - branch.length)}${branch}`;
  return `${markWords[mark]}${called.padEnd(nameWidth)} ${read.padStart(7)} ${showVolts(sound).padStart(6)}  ${lostWords(span)}`;
}

function readWords({ found, otherwise }: Rung): string {
  if (found !== undefined) return `${showVolts(found)} `;
  return otherwise === undefined ? '- ' : `(${showVolts(otherwise)})`;
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
  doubtful: '~ doubtful',
  suspect: '~ suspect',
} as const;

function lostWords(span: Rung['span']): string {
  if (span === undefined) return '';
  if (span.stretch === undefined) return '╌ not known';
  return `${verdictWords[span.stretch.verdict]}: ${showVolts(span.stretch.drop)} V`;
}

/** Where the excess lies, in sentences: also what a screen reader says. */
export function whereLines({ located, ladder, next, unshown }: FeedView): readonly string[] {
  const nameOf = (id: string): string =>
    rungsOf(ladder).find(({ station }) => station === id)?.name ?? id;
  const { faults, wrong, stretches } = located;
  const doubtful = stretches.filter(({ verdict }) => verdict === 'doubtful');
  return [
    ...wrong.map(
      ({ from, to }) =>
        `One of these two readings is wrong: ${nameOf(from)}, ${nameOf(to)}. Further on cannot be higher.`,
    ),
    ...(faults.length + doubtful.length === 0 ? [nothingLost(stretches)] : []),
    ...faults.flatMap(({ stretch }, rank) => faultLines(stretch, rank, nameOf)),
    ...doubtful.map(
      ({ from, to, drop, sound }) =>
        `More is lost between ${nameOf(from)} and ${nameOf(to)} than a sound stretch loses (${showReading(drop, 'V')}, ${showReading(sound, 'V')}), but all that was found speaks for something else.`,
    ),
    ...(unshown === undefined
      ? []
      : [`${unshown}: suspected all the same; no volts read show it.`]),
    ...(next.length === 0 ? [] : [`Probe next: ${next.join(' to ')}.`]),
  ];
}

const nothingLost = (read: readonly Stretch[]): string =>
  read.length === 0
    ? 'No two readings of this path to compare so far.'
    : 'No stretch read so far loses more than it may.';

/** One fault: where it lies, what it loses, and a caution where it is hot; `rank` 0 is the worst. */
function faultLines(bad: Stretch, rank: number, nameOf: (id: string) => string): readonly string[] {
  const lost = `${onMeter(bad.drop, 'V')} are lost there, a sound stretch loses ${onMeter(bad.sound, 'V')}`;
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
