import wrapAnsi from 'wrap-ansi';
import type { Typing } from '../app/typing/typing.ts';
import { cleanRow } from '../core/text.ts';
import { Line } from './parts.tsx';
import { useNoWindow } from './plain/no-window.ts';
import { isEmpty } from '../app/typing/typing.ts';

/** Words being typed, in one row: `_` stands where the next letter goes. */
export const shownTyping = ({ before, after }: Typing): string => `${before}_${after}`;

type FieldProps = {
  readonly typed: Typing;
  readonly columns: number;
  /** Rows there are for it; of longer words those around the cursor are shown. */
  readonly rows: number;
};

/** A field of words, folded into its rows. */
export function TextField({ typed, columns, rows }: FieldProps) {
  // There the line for it is the one that is typed next.
  if (useNoWindow() && isEmpty(typed)) return null;
  return fieldRows(typed, columns, Math.max(1, rows)).map((row, index) => (
    // oxlint-disable-next-line react/no-array-index-key -- rows have nothing else of their own, and never move
    <Line key={index}>{`${index === 0 ? '>' : ' '} ${row}`}</Line>
  ));
}

/** The rows around the cursor; `…` where there are more before or behind them. */
function fieldRows(typed: Typing, columns: number, rows: number): readonly string[] {
  const width = Math.max(8, columns - 4);
  const fold = (text: string): readonly string[] =>
    wrapAnsi(cleanRow(text), width, { trim: false, hard: true }).split('\n');
  const all = fold(shownTyping(typed));
  if (all.length <= rows) return all;
  const at = fold(`${typed.before}_`).length - 1;
  const from = Math.max(0, Math.min(at - Math.floor(rows / 2), all.length - rows));
  return all.slice(from, from + rows).map((row, index) => {
    if (index === 0 && from > 0) return `…${row.slice(1)}`;
    return index === rows - 1 && from + rows < all.length ? `${row.slice(0, -1)}…` : row;
  });
}
