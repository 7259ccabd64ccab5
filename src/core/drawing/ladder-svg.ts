import type { Rung } from '../feed/ladder.ts';
import type { Stretch } from '../feed/located/stretch.ts';
import { fitLine, fitText } from './fit-text.ts';
import type { FeedView } from './feed-view.ts';
import { whereLines } from './ladder-view.ts';
import { faint, fault, ink, line, panel, showPage, tint } from './page.ts';
import { boxAt, circleAt, element, textAt } from './xml.ts';

const row = 30;
const wire = 34;
const column = { name: 52, found: 400, sound: 460, lost: 474 };
const top = 122;
/** The loop of one load from the battery and back to it, with the volts read and the volts lost. */
export function ladderSvg(title: string, view: FeedView): string {
  const { supply, ground, load } = view.ladder;
  const said = whereLines({ ...view, next: [], unshown: undefined }).map((words) =>
    words.replace(/^! /, ''),
  );
  const [feeding, returning] = [folded(supply), folded(ground)];
  const loadTop = top + feeding.length * row;
  const groundTop = loadTop + row;
  const height = groundTop + returning.length * row + 8;
  const parts = [
    ...fitText(said.join(' '), { width: 564, lines: 4 }).map((words, at) =>
      textAt(18, 46 + at * 15, words),
    ),
    ...heads(),
    ...feeding.flatMap((one, at) => rowParts(one, top + at * row)),
    loadBox(load.name, loadTop),
    ...returning.flatMap((one, at) => rowParts(one, groundTop + at * row)),
  ];
  return showPage({ title, description: said.join(' '), height }, parts);
}

/** One station, or several in a row at which nothing was read. */
type Row = { readonly rungs: readonly [Rung, ...Rung[]] };

const isUnread = ({ found, otherwise }: Rung): boolean =>
  found === undefined && otherwise === undefined;

/** Inside a bad stretch: what is lost in all of it is told once, where it was read. */
const isWithin = (rung: Rung): boolean => {
  const verdict = rung.span?.stretch?.verdict;
  return isUnread(rung) && (verdict === 'bad' || verdict === 'wrong');
};

/** Stations in a row at which nothing was read are one row: they tell nothing one by one. */
function folded(rungs: readonly Rung[]): readonly Row[] {
  const rows: { rungs: [Rung, ...Rung[]] }[] = [];
  for (const rung of rungs) {
    const last = rows.at(-1);
    if (last !== undefined && isUnread(last.rungs[0]) && isUnread(rung)) last.rungs.push(rung);
    else rows.push({ rungs: [rung] });
  }
  return rows;
}

function rowParts({ rungs }: Row, y: number): readonly string[] {
  const [first, ...more] = rungs;
  if (more.length === 0) return rungParts(first, y);
  return [
    ...(first.span === undefined ? [] : spanParts(first.span.stretch, y, '')),
    ...[-8, 0, 8].map((x) => circleAt(wire, y + x, 2.5, { fill: panel, stroke: line })),
    textAt(column.name, y + 4, `${rungs.length} more, not read`, { fill: faint }),
  ];
}

const heads = (): readonly string[] =>
  (
    [
      [column.found, 'found, V', 'end'],
      [column.sound, 'sound, V', 'end'],
      [column.lost, 'on the way here', 'start'],
    ] as const
  ).map(([x, words, anchor]) =>
    textAt(x, top - 14, words, { 'text-anchor': anchor, 'font-size': 10, fill: faint }),
  );

const dot = { fill: ink, stroke: ink };

function rungParts(rung: Rung, y: number): readonly string[] {
  const { name, found, sound, span } = rung;
  const words = fitLine(name, column.found - column.name - 50);
  const number = { 'text-anchor': 'end' } as const;
  return [
    ...(span === undefined
      ? []
      : spanParts(span.stretch, y, isWithin(rung) ? '' : lostWords(span.stretch))),
    circleAt(wire, y, 5, found === undefined ? { fill: panel, stroke: line } : dot),
    textAt(column.name, y + 4, words, found === undefined ? { fill: faint } : {}),
    textAt(column.found, y + 4, foundWords(rung), {
      ...number,
      'font-weight': found === undefined ? undefined : 'bold',
    }),
    textAt(column.sound, y + 4, sound.toFixed(2), { ...number, fill: faint }),
  ];
}

/** What was read with other things on stands in brackets. */
function foundWords({ found, otherwise }: Rung): string {
  if (found !== undefined) return found.toFixed(2);
  return otherwise === undefined ? '-' : `(${otherwise.toFixed(2)})`;
}

/** Solid: proved sound. Crossed: loses too much. Long dashes: not open. Dots: not known. */
function spanParts(stretch: Stretch | undefined, y: number, words: string): readonly string[] {
  const verdict = stretch?.verdict;
  const bad = verdict === 'bad' || verdict === 'wrong';
  const middle = y - row / 2;
  return [
    element('line', {
      x1: wire,
      y1: y - row + 5,
      x2: wire,
      y2: y - 5,
      stroke: bad ? fault : verdict === undefined ? line : ink,
      'stroke-width': bad ? 3 : 2,
      'stroke-dasharray': verdict === undefined ? '2 4' : verdict === 'idle' ? '7 4' : undefined,
    }),
    ...(bad
      ? [
          element('path', {
            d: `M${wire - 6} ${middle - 6} l12 12 M${wire + 6} ${middle - 6} l-12 12`,
            stroke: fault,
            'stroke-width': 2.5,
          }),
        ]
      : []),
    textAt(column.lost, y + 4, words, {
      'font-size': 10,
      fill: bad ? fault : faint,
      'font-weight': bad ? 'bold' : undefined,
    }),
  ];
}

function lostWords(stretch: Stretch | undefined): string {
  if (stretch === undefined) return 'not known';
  const lost = `${stretch.drop.toFixed(2)} V`;
  const words = {
    sound: `sound: ${lost}`,
    bad: `BAD: ${lost}`,
    wrong: 'one is wrong',
    idle: 'not open',
    doubtful: `doubtful: ${lost}`,
    suspect: `suspect: ${lost}`,
  };
  return words[stretch.verdict];
}

const loadBox = (name: string, y: number): string =>
  boxAt([wire - 14, y - 11, 330, 22], { rx: 4, fill: tint, stroke: line }) +
  textAt(column.name, y + 4, fitLine(`the load: ${name}`, 290));
