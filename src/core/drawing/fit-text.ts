import { cleanRow } from '../text.ts';
import { markWidth, type Weight } from './face-widths.ts';

/** How wide a text comes out at most, in pixels. */
export const textWidth = (text: string, size = 12, weight: Weight = 'plain'): number =>
  (Array.from(text).reduce((sum, mark) => sum + markWidth(mark, weight), 0) * size) / 1000;

export type Box = {
  readonly width: number;
  readonly lines: number;
  readonly size?: number;
  readonly weight?: Weight;
};

/** More than this never fits a few lines, so that it need not be measured. */
const mostRead = 600;

/** Text in at most so many lines of a width; what does not fit ends in an ellipsis. */
export function fitText(text: string, { width, lines, size = 12, weight }: Box): readonly string[] {
  const words = cleanRow(text.slice(0, mostRead)).trim().split(/\s+/);
  const out: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size, weight) <= width || line === '') line = longer;
    else {
      out.push(line);
      line = word;
    }
  }
  out.push(line);
  const cut = out.length > lines;
  return out
    .slice(0, lines)
    .map((one, index) => cutTo(one, { width, size, weight }, cut && index === lines - 1));
}

/** Text in one line of a width. */
export function fitLine(text: string, width: number, size?: number, weight?: Weight): string {
  const [line = ''] = fitText(text, {
    width,
    lines: 1,
    ...(size !== undefined && { size }),
    ...(weight !== undefined && { weight }),
  });
  return line;
}

type Room = { readonly width: number; readonly size: number; readonly weight: Weight | undefined };

function cutTo(line: string, { width, size, weight }: Room, more: boolean): string {
  if (!more && textWidth(line, size, weight) <= width) return line;
  let room = width - textWidth('…', size, weight);
  const kept: string[] = [];
  for (const mark of line) {
    room -= textWidth(mark, size, weight);
    if (room < 0) break;
    kept.push(mark);
  }
  return `${kept.join('').replace(/[ ,;:]+$/, '')}…`;
}
