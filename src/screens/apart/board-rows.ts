import { bagWords, boardLines } from '../../app/walk/board.ts';
import type { At } from '../../app/screen.ts';
import type { Story } from '../../core/session/story.ts';
import type { Page } from '../claim-rows.ts';
import { folded, row, type Size } from '../rows.ts';
import { boardRows, detailOf } from './board-lines.ts';

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
  const shown = boardRows(lines, cursor, rows).slice(from, from + room);
  const page = [head, ...shown, ...detail];
  return page.length <= rows ? [page] : [page.slice(0, rows), page.slice(rows)];
}
