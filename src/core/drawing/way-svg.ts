import { count } from '../text.ts';
import { fitLine, fitText, textWidth } from './fit-text.ts';
import { faint, ink, line, pageWidth, panel, showPage, tint } from './page.ts';
import { shortened, type WayStep } from './way-steps.ts';
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
  parts.push(...legend(y + 4));
  return showPage({ title, description: describe(steps), height: y + 56 }, parts);
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
  const title = fitText(step.title, { width: boxWidth - 24, lines: 2 });
  const taken = step.taken === '' ? [] : fitText(step.taken, { width: boxWidth - 24, lines: 2 });
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

const inner = { rx: 3, fill: 'none', stroke: ink };

function frame({ kind, healthy }: WayStep, top: number, height: number): readonly string[] {
  const done = kind === 'repair' || kind === 'proof';
  const dashed = kind === 'passed over' || kind === 'gap';
  const bar = kind === 'check' || kind === 'proof' ? !healthy : false;
  return [
    boxAt([left, top, boxWidth, height], {
      rx: 5,
      fill: done ? tint : panel,
      stroke: dashed ? line : ink,
      'stroke-dasharray': dashed ? '5 4' : undefined,
    }),
    ...(done ? [boxAt([left + 3, top + 3, boxWidth - 6, height - 6], inner)] : []),
    ...(bar ? [boxAt([left, top, 6, height], { fill: ink })] : []),
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

function branchLines({ branches }: WayStep): readonly string[] {
  const shown = branches.length > mostBranches ? branches.slice(0, mostBranches - 1) : branches;
  const lines = shown.map(({ label, leads }) => {
    const whole = leads === '' ? label : `${label} → ${leads}`;
    return textWidth(whole, branchSize) <= branchWidth ? whole : label;
  });
  const more = branches.length - shown.length;
  return [
    ...lines.map((one) => fitLine(one, branchWidth, branchSize)),
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

function legend(y: number): readonly string[] {
  const words = [
    'Bold: what was found. Thick bar at the left: not what a healthy vehicle shows. Double line: repair and proof.',
    'Faded at the right: what else it could have shown, and where that leads. Dashed: passed over, or off the way.',
  ];
  return words.map((text, index) =>
    textAt(18, y + 14 + index * 15, text, { 'font-size': 9.6, fill: faint }),
  );
}
