import { cleanRow } from '../text.ts';
import { shortened } from './way-length.ts';
import type { WayStep } from './way-steps.ts';

/** Marks that mean something to Mermaid, or to the markdown around it, written by their code. */
const risky = /["#;<>&`%{}\\]/g;

const mostMarks = 300;

/** Text for a Mermaid label: quoted, and nothing in it can end the quotes. */
export const mermaidLabel = (text: string): string => {
  const marks = Array.from(cleanRow(text.slice(0, 4 * mostMarks)).trim());
  const short =
    marks.length > mostMarks ? `${marks.slice(0, mostMarks).join('')}…` : marks.join('');
  const coded = short.replace(risky, (mark) => `#${mark.charCodeAt(0)};`);
  return `"${coded === '' ? ' ' : coded}"`;
};

const shapes: Readonly<Record<WayStep['kind'], readonly [open: string, close: string]>> = {
  check: ['[', ']'],
  proof: ['([', '])'],
  repair: ['[[', ']]'],
  'passed over': ['[', ']'],
  'not told': ['[', ']'],
  'taken back': ['[', ']'],
  'healthy checks': ['[', ']'],
  complaint: ['{{', '}}'],
  'back to the complaint': ['{{', '}}'],
  'another tree': ['{{', '}}'],
  outcome: ['([', '])'],
  gap: ['(', ')'],
};

/** Kinds that need no word before what they say. */
const unnamed: readonly WayStep['kind'][] = ['check', 'gap', 'outcome'];

const nodeText = ({ kind, title }: WayStep): string =>
  unnamed.includes(kind) ? title : `${kind}: ${title}`;

/** The way that was walked as a Mermaid flow chart: what was done and found, and how it ended. */
export function wayMermaid(steps: readonly WayStep[]): string {
  const shown = shortened(steps);
  const nodes = shown.map((step, index) => {
    const [open, close] = shapes[step.kind];
    return `  s${index}${open}${mermaidLabel(nodeText(step))}${close}`;
  });
  const edges = shown.slice(1).map((_, index) => {
    const taken = wordsOf(shown[index]);
    const word = taken === '' ? '' : `|${mermaidLabel(taken)}|`;
    return `  s${index} -->${word} s${index + 1}`;
  });
  return ['flowchart TD', ...nodes, ...edges].join('\n');
}

const wordsOf = (step: WayStep | undefined): string =>
  [step?.taken ?? '', step?.trace ?? ''].filter((words) => words !== '').join('; ');
