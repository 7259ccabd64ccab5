import { count } from '../text.ts';
import { fitLine, fitText, textWidth } from './fit-text.ts';
import { faint, ink, line, pageWidth, panel, showPage, tint } from './page.ts';
import { shortened, type Branch, type WayStep } from './way-steps.ts';
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
    const numbered = step.kind === 'check' || step.kind === 'proof';
    if (step.kind === 'gap') number += countChecks(steps) - countChecks(shown);
    if (numbered) number += 1;
    const drawn = drawStep(step, numbered ? String(number) : '');
    if (index > 0) parts.push(arrow(y - gap, y, step.own));
    parts.push(...drawn.parts(y));
    y += drawn.height + gap;
  });
  const words = legendLines(shown);
  parts.push(...legend(words, y + 4));
  const height = y + 26 + words.length * legendLead;
  return showPage({ title, description: describe(steps), height }, parts);
}

const countChecks = (steps: readonly WayStep[]): number =>
  steps.filter(({ kind }) => kind === 'check' || kind === 'proof').length;

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
const headOf = ({ kind, healthy, own }: WayStep): string => {
  if (kind === 'proof') return healthy ? 'PROOF: GOOD' : 'PROOF: NOT CURED';
  if (kind === 'check') return own ? '' : 'CHOSEN, OFF THE WAY';
  return kind === 'gap' ? '' : kind.toUpperCase();
};

function drawStep(step: WayStep, number: string): Drawn {
  const head = headOf(step);
  const title = fitText(step.title, { width: textRoom, lines: 2 });
  const taken =
    step.taken === '' ? [] : fitText(step.taken, { width: textRoom, lines: 2, weight: 'bold' });
  const rows = (head === '' ? 0 : small) + (title.length + taken.length) * lead;
  const branches = branchLines(step);
  const height = Math.max(rows + 16, branches.length * small + 6);
  return {
    height,
    parts: (top) => [
      ...frame(step, top, height),
      ...(number === '' ? [] : [badge(number, top + 18)]),
      ...boxText({ head, title, taken }, top),
      ...branchText(branches, top, height),
    ],
  };
}

const isDone = ({ kind }: WayStep): boolean => kind === 'repair' || kind === 'proof';
const isDashed = ({ kind }: WayStep): boolean => kind === 'passed over' || kind === 'gap';
const isUnhealthy = ({ kind, healthy }: WayStep): boolean =>
  (kind === 'check' || kind === 'proof') && !healthy;

const inner = { rx: 3, fill: 'none', stroke: ink };

function frame(step: WayStep, top: number, height: number): readonly string[] {
  const done = isDone(step);
  const dashed = isDashed(step);
  return [
    boxAt([left, top, boxWidth, height], {
      rx: 5,
      fill: done ? tint : panel,
      stroke: dashed ? line : ink,
      'stroke-dasharray': dashed ? '5 4' : undefined,
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
};

function boxText({ head, title, taken }: BoxText, top: number): readonly string[] {
  const x = left + 14;
  let y = top + 6;
  const parts: string[] = [];
  if (head !== '') {
    y += small - 1;
    parts.push(textAt(x, y, head, { 'font-size': 9.5, 'letter-spacing': 0.6, fill: faint }));
  }
  for (const text of title) parts.push(textAt(x, (y += lead), text));
  for (const text of taken) parts.push(textAt(x, (y += lead), text, { 'font-weight': 'bold' }));
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
    ...has(isDone, 'Double line: repair and proof.'),
    ...(branches.length === 0
      ? []
      : [`Faded at the right: what else it could have shown${leads}.`]),
    ...has((step) => isDashed(step) || !step.own, 'Dashed: passed over, or off the way.'),
  ];
  return fitText(words.join(' '), { width: pageWidth - 36, lines: 4, size: legendSize });
}

const legend = (lines: readonly string[], y: number): readonly string[] =>
  lines.map((text, index) =>
    textAt(18, y + 14 + index * legendLead, text, { 'font-size': legendSize, fill: faint }),
  );
