import wrapAnsi from 'wrap-ansi';
import { cleanRow } from '../core/text.ts';
import type { Meaning } from './theme.ts';

/** Rows and columns there are. */
export type Size = { readonly rows: number; readonly columns: number };

/** A row of a page, folded to its width already. */
export type Row = { readonly mark: string; readonly text: string; readonly as: Meaning };

export const row = (mark: string, text: string, as: Meaning = 'plain'): Row => ({ mark, text, as });

/** A row as it is folded into the columns: what goes over stands under it, without its mark. */
export function folded({ mark, text, as }: Row, columns: number): readonly Row[] {
  const width = columns - 2 - (mark === '' ? 0 : mark.length + 1);
  const parts = wrapAnsi(cleanRow(text), width, { trim: false, hard: true }).split('\n');
  return parts.map((part, index) =>
    index === 0 ? row(mark, part, as) : row(' '.repeat(mark.length), part.replace(/^ /, ''), as),
  );
}
