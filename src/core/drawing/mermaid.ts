import { cleanRow } from '../text.ts';
import { shortened, type WayStep } from './way-steps.ts';

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
  'another complaint': ['{{', '}}'],
  gap: ['(', ')'],
};

const nodeText = ({ kind, title }: WayStep): string =>
  kind === 'check' || kind === 'gap' ? title : `${kind}: ${title}`;

const mostBranches = 3;

/** The way that was walked as a Mermaid flow chart; branches not taken hang on it by dotted lines. */
export function wayMermaid(steps: readonly WayStep[]): string {
  const shown = shortened(steps);
  const nodes = shown.map((step, index) => {
    const [open, close] = shapes[step.kind];
    return `  s${index}${open}${mermaidLabel(nodeText(step))}${close}`;
  });
  const edges = shown.slice(1).map((_, index) => {
    const taken = shown[index]?.taken ?? '';
    const word = taken === '' ? '' : `|${mermaidLabel(taken)}|`;
    return `  s${index} -->${word} s${index + 1}`;
  });
  const last = shown.at(-1);
  const end =
    last === undefined || last.taken === ''
      ? []
      : [`  s${shown.length - 1} --> done(${mermaidLabel(last.taken)})`];
  const branches = shown.flatMap(({ branches: off }, index) =>
    off
      .slice(0, mostBranches)
      .map(
        ({ label }, place) => `  s${index} -.- b${index}x${place}(${mermaidLabel(label)}):::off`,
      ),
  );
  return [
    'flowchart TD',
    ...nodes,
    ...edges,
    ...end,
    ...branches,
    '  classDef off opacity:0.55',
  ].join('\n');
}
