import { never } from '../problem.ts';
import { cleanLine } from '../text.ts';
import type { Block } from './block.ts';

/**
 * Text made into markdown that can only ever be that text: `&<>` as entities, a backslash before
 * every mark that CommonMark or GFM reads, white space folded.
 */
export const escapeMarkdown = (text: string): string =>
  cleanLine(text)
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/[\\`*_{}[\]()#+\-.!|~^$:=@"'/]/g, '\\$&');

/**
 * The same, with the marks left bare that cannot mean anything inside a line of prose: a reader of
 * the raw file sees `12.6 V (half)`, not a hedge of backslashes. Never at the beginning of a line.
 */
export const proseMarkdown = (text: string): string =>
  escapeMarkdown(text)
    .replace(/\\([+=!"'^$])/g, '$1')
    .replace(/\\([()])(?=[^[\]]*$)/g, '$1')
    .replace(/(\d)\\\.(?=\d)/g, '$1.')
    .replace(/\\\.(?=\s|$)/g, '.')
    .replace(/(\w)\\-(?=\w)/g, '$1-')
    .replace(/(?<=[\w ])\\\/(?=[\w ])/g, '/')
    .replace(/\\:(?=\s|$)/g, ':')
    .replace(/(\d)\\:(?=\d)/g, '$1:');

/** The account as GitHub-flavoured markdown; the same blocks give the same bytes. */
export const showMarkdown = (blocks: readonly Block[]): string =>
  `${blocks.map(showBlock).join('\n\n')}\n`;

function showBlock(block: Block): string {
  switch (block.kind) {
    case 'title':
      return `# ${proseMarkdown(block.text)}`;
    case 'heading':
      return `## ${proseMarkdown(block.text)}`;
    case 'paragraph':
      return guarded(proseMarkdown(block.text));
    case 'named':
      return `**${proseMarkdown(block.name)}.** ${proseMarkdown(block.text)}`;
    case 'list':
      return block.items
        .map(
          (item, index) =>
            `${block.numbered ? `${index + 1}.` : '-'} ${guarded(proseMarkdown(item))}`,
        )
        .join('\n');
    case 'table':
      return showTable(block.head, block.rows);
    case 'warning':
      return `> **Caution.** ${proseMarkdown(block.text)}`;
    case 'picture':
      return `![${escapeMarkdown(block.caption)}](${encodeURI(block.file)})`;
    default:
      return never(block);
  }
}

/** A line must not begin with what would make it a list, a heading or a rule. */
const guarded = (text: string): string =>
  text.replace(/^(\d+)([.)])/, '$1\\$2').replace(/^([+=-])/, '\\$1');

function showTable(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => (cell === '' ? ' ' : proseMarkdown(cell))).join(' | ')} |`;
  return [line(head), `|${head.map(() => ' --- |').join('')}`, ...rows.map(line)].join('\n');
}
