import { endingsOf } from '../app/walk/lists.ts';
import { clockTime } from '../core/session/clock.ts';
import { leftLines } from '../core/session/rules/left-open.ts';
import type { Story } from '../core/session/story.ts';
import { paged, type Page } from './claim-rows.ts';
import { folded, row, type Row } from './rows.ts';

/**
 * The pages that a job is closed on, or opened again: first all that it leaves as it should not stay,
 * one a line, then how it ends. The last page holds the ways to end it, and takes the key.
 */
export function closePages(
  story: Story,
  cursor: number,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): readonly Page[] {
  const all = (story.closed === undefined ? closing(story, cursor) : reopening(story)).flatMap(
    (one) => folded(one, columns),
  );
  return all.length <= rows ? [all] : paged(all, rows);
}

function closing(story: Story, cursor: number): readonly Row[] {
  const left = leftLines(story);
  const asks = left.length === 0 ? 'how does it end?' : 'this is how it is left.';
  return [
    row('', `CLOSE: ${asks}`, 'title'),
    ...left.map((line) => row('!', line, 'caution')),
    row('', 'Mark how it ends by its number; y closes it so.'),
    ...endingsOf(story).map(({ label }, index) =>
      row(
        `${index === cursor ? '>' : ' '} ${index + 1}`,
        label,
        index === cursor ? 'marked' : 'plain',
      ),
    ),
  ];
}

function reopening(story: Story): readonly Row[] {
  const { closed } = story;
  if (closed === undefined) throw new Error('a job that is not closed cannot be opened again');
  return [
    row('', 'OPEN IT AGAIN?', 'title'),
    row('', `It was closed at ${clockTime(closed.stamp.at)}: ${closed.as.replaceAll('-', ' ')}.`),
    ...leftLines(story).map((line) => row('!', line, 'caution')),
    row(
      '>',
      'y: open it again. The record keeps that it was closed. Esc: leave it closed.',
      'marked',
    ),
  ];
}
