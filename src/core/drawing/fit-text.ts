import { cleanRow } from '../text.ts';

/** Widths at 12 px of a wide sans-serif face, so that no usual face runs over: measured by eye. */
const widthOf = (mark: string): number => {
  if (/[ijlI.,:;|!'()[\] ]/.test(mark)) return 4.4;
  if (/[mwMW@%]/.test(mark)) return 11;
  if (/[A-Z]/.test(mark)) return 8.6;
  return (mark.codePointAt(0) ?? 0) < 0x1100 ? 7.2 : 13;
};

/** About how wide a text comes out, in pixels. */
export const textWidth = (text: string, size = 12): number =>
  (Array.from(text).reduce((sum, mark) => sum + widthOf(mark), 0) * size) / 12;

export type Box = { readonly width: number; readonly lines: number; readonly size?: number };

/** More than this never fits a few lines, so that it need not be measured. */
const mostRead = 600;

/** Text in at most so many lines of a width; what does not fit ends in an ellipsis. */
export function fitText(text: string, { width, lines, size = 12 }: Box): readonly string[] {
  const words = cleanRow(text.slice(0, mostRead)).trim().split(/\s+/);
  const out: string[] = [];
  let line = '';
  for (const word of words) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (textWidth(longer, size) <= width || line === '') line = longer;
    else {
      out.push(line);
      line = word;
    }
  }
  out.push(line);
  const cut = out.length > lines;
  return out
    .slice(0, lines)
    .map((one, index) => cutTo(one, { width, size }, cut && index === lines - 1));
}

/** Text in one line of a width. */
export function fitLine(text: string, width: number, size?: number): string {
  const [line = ''] = fitText(text, { width, lines: 1, ...(size !== undefined && { size }) });
  return line;
}

function cutTo(
  line: string,
  { width, size }: { width: number; size: number },
  more: boolean,
): string {
  if (!more && textWidth(line, size) <= width) return line;
  let room = width - textWidth('…', size);
  const kept: string[] = [];
  for (const mark of line) {
    room -= textWidth(mark, size);
    if (room < 0) break;
    kept.push(mark);
  }
  return `${kept.join('').replace(/[ ,;:]+$/, '')}…`;
}
