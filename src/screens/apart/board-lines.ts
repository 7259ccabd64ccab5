import type { BoardLine } from '../../app/walk/board.ts';
import { numberOf } from '../plain/no-window.ts';
import { row, type Row } from '../rows.ts';

/** Lines of the board, each with the number that marks it. */
export const boardRows = (
  lines: readonly BoardLine[],
  cursor: number,
  rows: number,
): readonly Row[] =>
  lines.map(({ kind, name }, at) => {
    const number = numberOf(at, cursor, rows) ?? ' ';
    const text = `${kind.padEnd(8)}${name}`;
    return row(`${at === cursor ? '>' : ' '} ${number}`, text, at === cursor ? 'marked' : 'plain');
  });

/** The marked line: all that is noted of it, what should come before, and what `y` says. */
export const detailOf = ({
  kind,
  name,
  detail,
  outOfOrder,
  first,
  claim,
}: BoardLine): readonly Row[] => [
  row('', ''),
  row('', `${kind}: ${name}`),
  ...detail.map((line) => row('', line)),
  ...(first === undefined ? [] : [row('!', `${first}.`, 'caution' as const)]),
  ...outOfOrder.map((line) => row('!', line, 'caution')),
  row('>', claim, 'marked'),
];
