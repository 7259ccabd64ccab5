import { bagWords, boardLines, type BoardLine } from '../../app/walk/board.ts';
import { lineNumber } from '../../app/keys/cursor.ts';
import type { At } from '../../app/screen.ts';
import type { Story } from '../../core/session/story.ts';
import type { Page } from '../claim-rows.ts';
import { folded, row, type Row, type Size } from '../rows.ts';

const titles = {
  off: 'APART, as it came off',
  back: 'PUTTING BACK, last off first',
} as const;

/**
 * The board: a line for each thing as far as there is room round the marked one, of which all that is
 * noted stands below, with what `y` says of it. What cannot be shown whole takes no key.
 */
export function boardPages(
  story: Story,
  { cursor, order }: At<'apart'>,
  { rows, columns }: Size,
): readonly Page[] {
  const lines = boardLines(story, order);
  const bags = bagWords(story);
  const head = row('', `${titles[order]}${bags === '' ? '' : `: ${bags}`}`, 'title');
  if (lines.length === 0) return [[head, row('', 'Nothing is off and nothing is open.')]];
  const marked = lines[cursor];
  const detail =
    marked === undefined ? [] : detailOf(marked).flatMap((one) => folded(one, columns));
  const room = Math.max(1, rows - 1 - detail.length);
  const from = Math.max(0, Math.min(cursor - Math.floor(room / 2), lines.length - room));
  const shown = lines.slice(from, from + room).map((line, index) => {
    const at = from + index;
    const number = lineNumber(at, cursor) ?? ' ';
    const text = `${line.kind.padEnd(8)}${line.name}`;
    return row(`${at === cursor ? '>' : ' '} ${number}`, text, at === cursor ? 'marked' : 'plain');
  });
  const page = [head, ...shown, ...detail];
  return page.length <= rows ? [page] : [page.slice(0, rows), page.slice(rows)];
}

const detailOf = ({ kind, name, detail, outOfOrder, first, claim }: BoardLine): readonly Row[] => [
  row('', ''),
  row('', `${kind}: ${name}`),
  ...detail.map((line) => row('', line)),
  ...(first === undefined ? [] : [row('!', `${first}.`, 'caution' as const)]),
  ...outOfOrder.map((line) => row('!', line, 'caution')),
  row('>', claim, 'marked'),
];
