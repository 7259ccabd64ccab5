import { percent } from '../reason/history/wording.ts';
import { fitLine } from './fit-text.ts';
import { faint, ink, line, panel, showPage } from './page.ts';
import type { Band, SuspectBands } from './suspect-bands.ts';
import { boxAt, circleAt, element, textAt } from './xml.ts';

const chart = { left: 46, top: 46, width: 536, height: 220 };

/** Grounds and hatchings: each differs from its neighbors without its color too. */
const patterns: readonly { readonly ground: string; readonly marks: string }[] = [
  { ground: '#bcd3e6', marks: 'M0 8 L8 0 M-2 2 L2 -2 M6 10 L10 6' },
  { ground: '#f0d9ae', marks: 'M0 4 H8' },
  { ground: '#c9dfc0', marks: 'M0 0 L8 8 M-2 6 L2 10 M6 -2 L10 2' },
  { ground: '#e4c9d6', marks: 'M4 0 V8' },
  { ground: '#d9d3ec', marks: 'M0 4 H8 M4 0 V8' },
  { ground: '#f2cbbd', marks: 'M0 0 L8 8 M8 0 L0 8' },
  { ground: '#dfe3e6', marks: 'M3 3 h2 v2 h-2 z' },
  { ground: panel, marks: '' },
];

const letters = 'ABCDEFGH';
const outline = { stroke: ink, 'stroke-width': 0.8 };

function patternDefs(): string {
  return patterns
    .map(({ ground, marks }, index) =>
      element(
        'pattern',
        { id: `p${index}`, width: 8, height: 8, patternUnits: 'userSpaceOnUse' },
        element('rect', { width: 8, height: 8, fill: ground }) +
          (marks === ''
            ? ''
            : element('path', {
                d: marks,
                stroke: faint,
                'stroke-width': 0.8,
                'stroke-opacity': 0.7,
                fill: 'none',
              })),
      ),
    )
    .join('');
}

/** Suspects over the session as stacked bands, with a legend that names them. */
export function suspectsSvg(title: string, { moments, bands }: SuspectBands): string {
  const step = chart.width / moments.length;
  const stacks = stacked(bands, moments.length);
  const parts = [
    ...bands.map((_, band) => bandShape(stacks, band, step)),
    ...bands.flatMap((_, band) => bandLetters(stacks, band, step)),
    ...axes(moments, step),
    ...bands.flatMap((band, index) => legendRow(band, index)),
    textAt(18, legendTop + bands.length * 18 + 10, reading, { 'font-size': 10, fill: faint }),
  ];
  return showPage(
    {
      title,
      description: describe(bands, moments.length - 1),
      height: legendTop + bands.length * 18 + 26,
      defs: patternDefs(),
    },
    parts,
  );
}

const reading =
  'Height: how likely. Along the foot: the findings by their number in the table; R: a repair.';

/** Running sums: stacks[band][moment] is the top edge of a band, as a share from the foot. */
function stacked(bands: readonly Band[], moments: number): readonly (readonly number[])[] {
  const tops: number[][] = [];
  bands.forEach(({ shares }, band) => {
    const below = tops[band - 1] ?? Array.from({ length: moments }, () => 0);
    tops.push(shares.map((share, index) => share + (below[index] ?? 0)));
  });
  return tops;
}

const yOf = (share: number): number => chart.top + chart.height * (1 - Math.min(1, share));
const round = (value: number): number => Math.round(value * 10) / 10;

/** Steps, not slopes: between two findings nothing was learned. */
function edge(shares: readonly number[], step: number): readonly string[] {
  return shares.flatMap((share, index) => {
    const y = round(yOf(share));
    const x = chart.left + index * step;
    return [`${round(x)} ${y}`, `${round(x + step)} ${y}`];
  });
}

function bandShape(stacks: readonly (readonly number[])[], band: number, step: number): string {
  const top = stacks[band] ?? [];
  const below = stacks[band - 1] ?? top.map(() => 0);
  const corners = [...edge(top, step), ...edge(below, step).toReversed()];
  return element('path', {
    d: `M${corners.join(' L')} Z`,
    fill: `url(#p${band})`,
    ...outline,
  });
}

/** The band's letter where it first has room for one, and again where it is tallest. */
function bandLetters(
  stacks: readonly (readonly number[])[],
  band: number,
  step: number,
): readonly string[] {
  const heights = (stacks[band] ?? []).map(
    (top, index) => (top - (stacks[band - 1]?.[index] ?? 0)) * chart.height,
  );
  const first = heights.findIndex((height) => height >= 15);
  const tallest = heights.indexOf(Math.max(...heights));
  return [...new Set([first, Math.abs(tallest - first) > 3 ? tallest : first])]
    .filter((moment) => moment >= 0)
    .map((moment) => {
      const x = chart.left + (moment + 0.5) * step;
      const y = yOf(stacks[band]?.[moment] ?? 0) + (heights[moment] ?? 0) / 2;
      return (
        circleAt(x, y, 7, { fill: panel }) +
        textAt(x, y + 3.8, letters[band] ?? '', {
          'text-anchor': 'middle',
          'font-size': 11,
          'font-weight': 'bold',
        })
      );
    });
}

function axes(moments: SuspectBands['moments'], step: number): readonly string[] {
  const foot = chart.top + chart.height;
  const every = Math.max(1, Math.ceil(moments.length / 22));
  return [
    boxAt([chart.left, chart.top, chart.width, chart.height], { fill: 'none', stroke: line }),
    ...[0, 50, 100].map((share) =>
      textAt(chart.left - 6, yOf(share / 100) + 4, `${share} %`, {
        'text-anchor': 'end',
        'font-size': 10,
        fill: faint,
      }),
    ),
    ...moments.flatMap(({ label, kind }, index) =>
      index % every !== 0 && kind !== 'repair'
        ? []
        : [
            textAt(chart.left + (index + 0.5) * step, foot + 15, label, {
              'text-anchor': 'middle',
              'font-size': 10,
              'font-weight': kind === 'repair' ? 'bold' : undefined,
            }),
          ],
    ),
  ];
}

const legendTop = chart.top + chart.height + 34;

function legendRow({ name, first, most }: Band, index: number): readonly string[] {
  const y = legendTop + index * 18;
  return [
    boxAt([18, y - 10, 20, 13], { fill: `url(#p${index})`, ...outline }),
    textAt(46, y, letters[index] ?? '', { 'font-weight': 'bold' }),
    textAt(62, y, fitLine(name, 380)),
    textAt(582, y, `${percent(first)} at first, ${percent(most)} at most`, {
      'text-anchor': 'end',
      'font-size': 10,
      fill: faint,
    }),
  ];
}

function describe(bands: readonly Band[], findings: number): string {
  const words = bands.map(
    ({ name, first, most }) => `${name}: ${percent(first)} at first, ${percent(most)} at most`,
  );
  return `The chances of the suspects after each of ${findings} findings and repairs. ${words.join('; ')}.`;
}
