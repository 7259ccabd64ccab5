import { historyLines, type HistoryLine } from '../app/walk/history.ts';
import type { Story } from '../core/session/story.ts';
import { count } from '../core/text.ts';
import type { Page } from './claim-rows.ts';
import { endless } from './plain/no-window.ts';
import { folded, row } from './rows.ts';

const asks: Readonly<Record<HistoryLine['mend'], string>> = {
  nothing: 'Up and down: another line. Esc: back to the step.',
  'take back': 'y: take this back. Up and down: another line. Esc: back.',
  'take back or answer anew': 'y: take this back. a: answer it anew. Esc: back.',
};

/**
 * The history: a line for each thing, as many as there is room for round the marked one, which stands
 * in full below. Where that cannot be shown whole there is a second page, and no key is taken.
 */
export function historyPages(
  story: Story,
  cursor: number,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): readonly Page[] {
  const lines = historyLines(story);
  const marked = lines[cursor];
  const done = lines.filter(({ n }) => n !== undefined).length;
  const title = row(
    '',
    `HISTORY: ${count(done, 'thing')} written, ${lines.length - done} left open`,
    'title',
  );
  const detail =
    marked === undefined
      ? []
      : [
          row('', ''),
          row('', `${marked.time}  ${marked.words}`),
          row('>', asks[marked.mend], 'marked'),
        ].flatMap((one) => folded(one, columns));
  const room = Math.max(1, rows - 1 - detail.length);
  const from = Math.max(0, Math.min(cursor - Math.floor(room / 2), lines.length - room));
  const shown = lines
    .slice(from, from + room)
    .map(({ n, time, words }, index) =>
      row(
        from + index === cursor ? '>' : n === undefined ? '!' : ' ',
        `${rows === endless ? `${index + 1}  ` : ''}${time}  ${words}`,
        from + index === cursor ? 'marked' : n === undefined ? 'caution' : 'plain',
      ),
    );
  const page = [title, ...shown, ...detail];
  return page.length <= rows ? [page] : [page.slice(0, rows), page.slice(rows)];
}
