import { percent } from '../reason/history/wording.ts';
import { fitText, textWidth } from './fit-text.ts';
import { faint, ink, line, panel, proven, showPage, tint } from './page.ts';
import { moreThanOne } from './suspect-words.ts';
import type { Moment, SuspectRow, SuspectRows } from './suspect-rows.ts';
import { boxAt, element, textAt } from './xml.ts';

const row = { top: 74, height: 48, gap: 14 };
const label = { left: 18, width: 164 };
const chart = { left: 226, right: 492 };
const provedWidth = 48;
const numbers = { left: 502, size: 10 };
const legendSize = 9.6;
const legendLead = 15;

/** Where the moments of a picture lie: each as wide as the next, the proof in a column of its own. */
type Scale = { readonly step: number; readonly foot: number; readonly end: number };

/** The suspects of one complaint, each on an axis of its own from 0 to 100 %. */
export function suspectsSvg(title: string, suspects: SuspectRows): string {
  const { moments, rows, proved } = suspects;
  const end = chart.right - (proved ? provedWidth : 0);
  const foot = row.top + rows.length * (row.height + row.gap) - row.gap;
  const scale = { step: (end - chart.left) / Math.max(1, moments.length), foot, end };
  const words = fitText(legendOf(suspects), { width: 564, lines: 5, size: legendSize });
  const parts = [
    textAt(18, 48, moreThanOne, { 'font-size': 11 }),
    ...rows.flatMap((one, index) => rowParts(suspects, one, { scale, top: topOf(index) })),
    ...footParts(moments, scale),
    ...(proved ? [textAt((end + chart.right) / 2, foot + 14, 'proved', footText)] : []),
    ...words.map((text, at) =>
      textAt(18, foot + 38 + at * legendLead, text, { 'font-size': legendSize, fill: faint }),
    ),
  ];
  const height = foot + 38 + words.length * legendLead;
  return showPage({ title, description: describe(suspects), height, defs }, parts);
}

const topOf = (index: number): number => row.top + index * (row.height + row.gap);

const footText = { 'text-anchor': 'middle', 'font-size': 10 } as const;

/** What was not weighed is dotted, what was proved is gray and hatched: neither is a chance of 0. */
const defs =
  element(
    'pattern',
    { id: 'unknown', width: 6, height: 6, patternUnits: 'userSpaceOnUse' },
    element('rect', { x: 2, y: 2, width: 2, height: 2, fill: line }),
  ) +
  element(
    'pattern',
    { id: 'proved', width: 8, height: 8, patternUnits: 'userSpaceOnUse' },
    element('rect', { width: 8, height: 8, fill: proven }) +
      element('path', { d: 'M0 8 L8 0', stroke: line, 'stroke-width': 0.8 }),
  );

type Place = { readonly scale: Scale; readonly top: number };

function rowParts(
  { moments, proved, rows }: SuspectRows,
  one: SuspectRow,
  { scale, top }: Place,
): readonly string[] {
  const width = chart.right - chart.left;
  return [
    ...nameParts(one, top),
    boxAt([chart.left, top, width, row.height], { fill: panel, stroke: line }),
    ...(proved
      ? [boxAt([scale.end, top, provedWidth, row.height], { fill: 'url(#proved)', stroke: line })]
      : []),
    ...unknownParts(moments, rows, { scale, top }),
    element('line', {
      x1: chart.left,
      y1: top + row.height / 2,
      x2: scale.end,
      y2: top + row.height / 2,
      stroke: line,
      'stroke-width': 0.6,
      'stroke-dasharray': '2 3',
    }),
    ...[100, 50, 0].map((share) =>
      textAt(chart.left - 5, yOf(share / 100, top) + 3.5, `${share} %`, {
        'text-anchor': 'end',
        'font-size': 9.5,
        fill: faint,
      }),
    ),
    ...runsOf(one.chances).flatMap((run) => runParts(run, one.done !== undefined, { scale, top })),
    ...repairLines(moments, { scale, top }),
    ...numberParts(one, top),
  ];
}

const yOf = (chance: number, top: number): number => top + row.height * (1 - chance);

function nameParts({ name, done }: SuspectRow, top: number): readonly string[] {
  const weight = done === undefined ? 'plain' : 'bold';
  const lines = fitText(name, { width: label.width, lines: 2, weight });
  return [
    ...lines.map((text, at) =>
      textAt(label.left, top + 12 + at * 14, text, done && { 'font-weight': 'bold' }),
    ),
    ...(done === undefined
      ? []
      : [
          textAt(label.left, top + 12 + lines.length * 14, done, {
            'font-size': 10,
            fill: faint,
          }),
        ]),
  ];
}

/** The chances at first and at most, where there are any. */
function numberParts({ chances }: SuspectRow, top: number): readonly string[] {
  const told = chances.filter((chance) => chance !== undefined);
  const [first] = told;
  if (first === undefined) return [];
  return [`${percent(first)} at first`, `${percent(Math.max(...told))} at most`].map((text, at) =>
    textAt(numbers.left, top + 20 + at * 14, text, { 'font-size': numbers.size, fill: faint }),
  );
}

/** Moments of which nothing is known of any suspect. */
const unknownParts = (
  moments: readonly Moment[],
  rows: readonly SuspectRow[],
  { scale, top }: Place,
): readonly string[] =>
  moments.flatMap((_, at) =>
    isUnknown(rows, at)
      ? [
          boxAt([chart.left + at * scale.step, top, scale.step, row.height], {
            fill: 'url(#unknown)',
          }),
        ]
      : [],
  );

const isUnknown = (rows: readonly SuspectRow[], at: number): boolean =>
  rows.every(({ chances }) => chances[at] === undefined);

type Run = { readonly from: number; readonly chances: readonly number[] };

/** The stretches of a row along which it has chances. */
function runsOf(chances: readonly (number | undefined)[]): readonly Run[] {
  const runs: { from: number; chances: number[] }[] = [];
  chances.forEach((chance, at) => {
    if (chance === undefined) return;
    const last = runs.at(-1);
    if (last !== undefined && last.from + last.chances.length === at) last.chances.push(chance);
    else runs.push({ from: at, chances: [chance] });
  });
  return runs;
}

/** Steps, not slopes: between two findings nothing was learned. */
function runParts({ from, chances }: Run, isDone: boolean, { scale, top }: Place) {
  const corners = chances.flatMap((chance, index) => {
    const [x, y] = [chart.left + (from + index) * scale.step, yOf(chance, top)];
    return [`${short(x)} ${short(y)}`, `${short(x + scale.step)} ${short(y)}`];
  });
  const [left, right] = [from, from + chances.length].map((at) => chart.left + at * scale.step);
  const foot = top + row.height;
  return [
    element('path', {
      d: `M${short(left ?? 0)} ${foot} L${corners.join(' L')} L${short(right ?? 0)} ${foot} Z`,
      fill: isDone ? suspected : tint,
    }),
    element('path', {
      d: `M${corners.join(' L')}`,
      fill: 'none',
      stroke: ink,
      'stroke-width': isDone ? 2 : 1.4,
    }),
  ];
}

const suspected = '#9fc0dc';
const short = (value: number): number => Math.round(value * 10) / 10;

const repairLines = (moments: readonly Moment[], { scale, top }: Place): readonly string[] =>
  moments.flatMap(({ kind }, at) =>
    kind === 'repair' || kind === 'next tree'
      ? [
          element('line', {
            x1: chart.left + at * scale.step,
            y1: top,
            x2: chart.left + at * scale.step,
            y2: top + row.height,
            stroke: ink,
            'stroke-width': 1,
            'stroke-dasharray': kind === 'repair' ? '4 2' : undefined,
          }),
        ]
      : [],
  );

/** Numbers of the findings along the foot, as many as there is room for; repairs always. */
function footParts(moments: readonly Moment[], { step, foot }: Scale): readonly string[] {
  const taken: { x: number; half: number }[] = [];
  const ranked = moments
    .map((moment, at) => ({ ...moment, x: chart.left + (at + 0.5) * step }))
    .toSorted((one, other) => Number(other.kind === 'repair') - Number(one.kind === 'repair'));
  return ranked.flatMap(({ label: text, kind, x }) => {
    const half = textWidth(text, 10, 'bold') / 2 + 2;
    const isTaken = taken.some((one) => Math.abs(one.x - x) < one.half + half);
    if (text === '' || isTaken) return [];
    taken.push({ x, half });
    return [textAt(x, foot + 14, text, { ...footText, ...(kind === 'repair' && bold) })];
  });
}

const bold = { 'font-weight': 'bold' } as const;

/** What the signs mean that are drawn, and nothing of those that are not. */
function legendOf({ moments, rows, proved }: SuspectRows): string {
  const has = (kind: Moment['kind']): boolean => moments.some((moment) => moment.kind === kind);
  return [
    'Height: how likely. Along the foot: the findings by their number in the table.',
    ...(has('repair') ? ['R and a dashed line: a repair.'] : []),
    ...(rows.some(({ done }) => done !== undefined)
      ? ['Bold: what was named or mended in the end, or on the way.']
      : []),
    ...(has('next tree') ? ['Upright line: another tree took over, with its own list.'] : []),
    ...(moments.some((_, at) => isUnknown(rows, at))
      ? ['Dotted: not weighed, or nothing on the list fits all that was found.']
      : []),
    ...(proved
      ? ["Gray, hatched: the complaint's own test showed good; nothing is suspected any more."]
      : []),
  ].join(' ');
}

function describe({ moments, rows, proved }: SuspectRows): string {
  const words = rows.map(({ name, chances, done }) => {
    const told = chances.filter((chance) => chance !== undefined);
    const [first = 0] = told;
    return `${name}: ${percent(first)} at first, ${percent(Math.max(0, ...told))} at most${done === undefined ? '' : `, ${done}`}`;
  });
  const steps = moments.filter(({ kind }) => kind === 'finding' || kind === 'repair').length;
  return `How likely each suspect was after each of ${steps} findings and repairs, each on an axis from 0 to 100 %. ${moreThanOne} ${words.join('; ')}.${proved ? ' At the end the repair is proved, and nothing is suspected any more.' : ''}`;
}
