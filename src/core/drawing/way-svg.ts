import { count } from '../text.ts';
import { fitLine, fitText, textWidth } from './fit-text.ts';
import { faint, ink, line, pageWidth, panel, showPage, tint } from './page.ts';
import { shortened } from './way-length.ts';
import type { Branch, WayStep } from './way-steps.ts';
import { boxAt, circleAt, element, textAt } from './xml.ts';

const left = 52;
const boxWidth = 296;
const branchLeft = 372;
const branchWidth = pageWidth - branchLeft - 14;
const lead = 16;
const small = 13;
const gap = 20;
const mostBranches = 4;
const branchSize = 10;
const legendSize = 9.6;
const legendLead = 15;
/** Room for text in a box: as far from its right edge as from its left. */
const textRoom = boxWidth - 28;

type Drawn = { readonly height: number; readonly parts: (top: number) => readonly string[] };

/** The way through the tree from top to bottom; what was not taken stands faded at its side. */
export function waySvg(title: string, steps: readonly WayStep[]): string {
  const shown = shortened(steps);
  const top = 46;
  const parts: string[] = [];
  let y = top;
  let number = 0;
  shown.forEach((step, index) => {
    const { kind, checks } = step;
    const isNumbered = checks > 0 && kind !== 'gap';
    const drawn = drawStep(step, isNumbered ? number + 1 : undefined);
    number += checks;
    if (index > 0 && !isDivider(step)) parts.push(arrow(y - gap, y, step.own));
    parts.push(...drawn.parts(y));
    y += drawn.height + gap;
  });
  const words = legendLines(shown);
  parts.push(...legend(words, y + 4));
  const height = y + 26 + words.length * legendLead;
  return showPage({ title, description: describe(steps), height }, parts);
}

function describe(steps: readonly WayStep[]): string {
  const words = steps
    .slice(0, 60)
    .map(({ kind, title, taken }) => `${kind}: ${title}${taken === '' ? '' : `, ${taken}`}`);
  return `The way from the complaint, ${count(steps.length, 'step')} from top to bottom. ${words.join('. ')}.`;
}

const arrow = (from: number, to: number, own: boolean): string => {
  const stroke = { fill: 'none', stroke: ink, 'stroke-width': 1.4 };
  const x = left + 24;
  const shaft = { d: `M${x} ${from} V${to - 5}`, 'stroke-dasharray': own ? undefined : '3 3' };
  return (
    element('path', { ...shaft, ...stroke }) +
    element('path', { d: `M${x - 4} ${to - 10} l4 5 l4 -5`, ...stroke })
  );
};

/** What stands over a box that is no plain check. */
function headOf({ kind, healthy, own, checks }: WayStep, number = 0): string {
  if (kind === 'proof') return healthy ? 'PROOF: GOOD' : 'PROOF: NOT CURED';
  if (kind === 'check') return own ? '' : 'CHOSEN, OFF THE WAY';
  if (kind === 'healthy checks')
    return `${number} TO ${number + checks - 1}: NOTHING CAME TO LIGHT`;
  return kind === 'gap' ? '' : kind.toUpperCase();
}

function drawStep(step: WayStep, number: number | undefined): Drawn {
  if (isDivider(step)) return divider(step);
  const text = boxWords(step, number);
  const lines = text.title.length + text.taken.length + text.trace.length;
  const rows = (text.head === '' ? 0 : small) + lines * lead;
  const branches = branchLines(step);
  const height = Math.max(rows + 16, branches.length * small + 6);
  return {
    height,
    parts: (top) => [
      ...frame(step, top, height),
      ...(number === undefined ? [] : [badge(String(number), top + 18)]),
      ...boxText(text, top),
      ...branchText(branches, top, height),
    ],
  };
}

const bold = { width: textRoom, lines: 2, weight: 'bold' } as const;

/** How it ended is said in bold alone. */
function boxWords(step: WayStep, number: number | undefined): BoxText {
  const { kind, title, taken, trace } = step;
  const head = headOf(step, number);
  if (kind === 'outcome')
    return { head, title: [], taken: fitText(title, { ...bold, lines: 4 }), trace: [] };
  return {
    head,
    title: fitText(title, { width: textRoom, lines: kind === 'healthy checks' ? 5 : 2 }),
    taken: taken === '' ? [] : fitText(taken, bold),
    trace: trace === '' ? [] : fitText(trace, { width: textRoom, lines: 2, size: 11 }),
  };
}

/** A new complaint parts the way from edge to edge. */
function divider(step: WayStep): Drawn {
  const words = fitLine(step.title, pageWidth - 60, 13, 'bold');
  return {
    height: 44,
    parts: (top) => [
      boxAt([14, top, pageWidth - 28, 44], { fill: ink }),
      textAt(28, top + 16, headOf(step), { 'font-size': 9.5, 'letter-spacing': 0.6, fill: panel }),
      textAt(28, top + 34, words, { 'font-size': 13, 'font-weight': 'bold', fill: panel }),
    ],
  };
}

const isDivider = ({ kind }: WayStep): boolean =>
  kind === 'complaint' || kind === 'back to the complaint';
const isDone = ({ kind }: WayStep): boolean =>
  kind === 'repair' || kind === 'proof' || kind === 'outcome';
const dashed: readonly WayStep['kind'][] = ['passed over', 'not told', 'taken back', 'gap'];
const isDashed = ({ kind }: WayStep): boolean => dashed.includes(kind);
const isUnhealthy = ({ kind, healthy }: WayStep): boolean =>
  (kind === 'check' || kind === 'proof') && !healthy;

const inner = { rx: 3, fill: 'none', stroke: ink };

function frame(step: WayStep, top: number, height: number): readonly string[] {
  const done = isDone(step);
  const isFaded = isDashed(step);
  return [
    boxAt([left, top, boxWidth, height], {
      rx: 5,
      fill: done ? tint : panel,
      stroke: isFaded ? line : ink,
      'stroke-dasharray': isFaded ? '5 4' : undefined,
    }),
    ...(done ? [boxAt([left + 3, top + 3, boxWidth - 6, height - 6], inner)] : []),
    ...(isUnhealthy(step) ? [boxAt([left, top, 6, height], { fill: ink })] : []),
  ];
}

const badge = (number: string, y: number): string =>
  circleAt(30, y, 13, { fill: panel, stroke: ink }) +
  textAt(30, y + 4, number, { 'text-anchor': 'middle', 'font-size': 11 });

type BoxText = {
  readonly head: string;
  readonly title: readonly string[];
  readonly taken: readonly string[];
  readonly trace: readonly string[];
};

function boxText({ head, title, taken, trace }: BoxText, top: number): readonly string[] {
  const x = left + 14;
  let y = top + 6;
  const parts: string[] = [];
  if (head !== '') {
    y += small - 1;
    parts.push(textAt(x, y, head, { 'font-size': 9.5, 'letter-spacing': 0.6, fill: faint }));
  }
  for (const text of title) parts.push(textAt(x, (y += lead), text));
  for (const text of taken) parts.push(textAt(x, (y += lead), text, { 'font-weight': 'bold' }));
  for (const text of trace)
    parts.push(textAt(x, (y += lead), text, { 'font-size': 11, fill: faint }));
  return parts;
}

const shownBranches = ({ branches }: WayStep): readonly Branch[] =>
  branches.length > mostBranches ? branches.slice(0, mostBranches - 1) : branches;

/** Where it leads is left out where there is no room. */
function branchWords({ label, leads }: Branch): string {
  const whole = leads === '' ? label : `${label} → ${leads}`;
  return textWidth(whole, branchSize) <= branchWidth ? whole : label;
}

function branchLines(step: WayStep): readonly string[] {
  const shown = shownBranches(step);
  const more = step.branches.length - shown.length;
  return [
    ...shown.map((one) => fitLine(branchWords(one), branchWidth, branchSize)),
    ...(more > 0 ? [`and ${more} more`] : []),
  ];
}

function branchText(lines: readonly string[], top: number, height: number): readonly string[] {
  if (lines.length === 0) return [];
  const middle = top + height / 2;
  const first = middle - (lines.length * small) / 2 + 10;
  return [
    element('path', {
      d: `M${left + boxWidth} ${middle} H${branchLeft - 8} M${branchLeft - 8} ${first - 9} V${first + (lines.length - 1) * small + 3}`,
      fill: 'none',
      stroke: line,
      'stroke-dasharray': '2 3',
    }),
    ...lines.map((text, index) =>
      textAt(branchLeft, first + index * small, text, { 'font-size': branchSize, fill: faint }),
    ),
  ];
}

/** What the signs mean that are drawn, and nothing of those that are not. */
function legendLines(steps: readonly WayStep[]): readonly string[] {
  const has = (told: (step: WayStep) => boolean, words: string): readonly string[] =>
    steps.some(told) ? [words] : [];
  const branches = steps.flatMap((step) => shownBranches(step));
  const led = branches.filter(({ leads }) => leads !== '');
  const drawn = led.filter((branch) => branchWords(branch) !== branch.label);
  const leads =
    drawn.length === 0
      ? ''
      : drawn.length === led.length
        ? ', and where that leads'
        : ', and where there is room, where that leads';
  const words = [
    ...has(({ taken }) => taken !== '', 'Bold: what was found or done.'),
    ...has(isUnhealthy, 'Thick bar at the left: not what a healthy vehicle shows.'),
    ...has(isDone, 'Double line: repair, proof and how it ended.'),
    ...(branches.length === 0
      ? []
      : [`Faded at the right: what else it could have shown${leads}.`]),
    ...has(
      (step) => isDashed(step) || !step.own,
      'Dashed: passed over, not told, taken back, or off the way.',
    ),
  ];
  return fitText(words.join(' '), { width: pageWidth - 36, lines: 4, size: legendSize });
}

const legend = (lines: readonly string[], y: number): readonly string[] =>
  lines.map((text, index) =>
    textAt(18, y + 14 + index * legendLead, text, { 'font-size': legendSize, fill: faint }),
  );
