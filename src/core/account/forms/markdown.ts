import { never } from '../../problem.ts';
import { cleanLine } from '../../text.ts';
import type { Block, Words } from '../block.ts';

/**
 * Text made into markdown that can only ever be that text: `&<>` as entities, a backslash before
 * every mark that CommonMark or GFM reads, white space folded.
 */
const escapeMarkdown = (text: string): string => escapeMarks(cleanLine(text));

const escapeMarks = (text: string): string =>
  text
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/[\\`*_{}[\]()#+\-.!|~^$:=@"'/]/g, '\\$&');

/**
 * The same, with the marks left bare that cannot mean anything inside a line of prose: a reader of
 * the raw file sees `12.6 V (half)`, not a hedge of backslashes. Never at the beginning of a line.
 */
export const proseMarkdown = (text: string): string => bared(escapeMarkdown(text));

const bared = (escaped: string): string =>
  escaped
    .replace(/\\([+=!"'^$])/g, '$1')
    .replace(/\\([()])(?=[^[\]]*$)/g, '$1')
    .replace(/(\d)\\\.(?=\d)/g, '$1.')
    .replace(/\\\.(?=["\s]|$)/g, '.')
    .replace(/(\w)\\-(?=\w)/g, '$1-')
    .replace(/(?<=\S )\\-(?=[ \d])/g, '-')
    .replace(/(?<=[\w ])\\\/(?=[\w ])/g, '/')
    .replace(/\\:(?=\s|$)/g, ':')
    .replace(/(\d)\\:(?=\d)/g, '$1:');

/**
 * Words with links into the account itself. What stands just before a link keeps all its
 * backslashes, since a mark there could make something else of the link.
 */
function showWords(words: Words): string {
  if (typeof words === 'string') return proseMarkdown(words);
  return words
    .map((part, index) => {
      if (typeof part !== 'string') return `[${escapeMarkdown(part.text)}](#${encodeURI(part.to)})`;
      const beforeLink = words[index + 1] !== undefined;
      const text = cleanLine(`x${part}x`).slice(1, -1);
      const whole = bared(escapeMarks(text));
      if (!beforeLink) return whole;
      const [tail = ''] = /[^\s\p{L}\p{N}]*$/u.exec(text) ?? [''];
      return `${bared(escapeMarks(text.slice(0, text.length - tail.length)))}${escapeMarks(tail)}`;
    })
    .join('');
}

/** The account as GitHub-flavoured markdown; the same blocks give the same bytes. */
export const showMarkdown = (blocks: readonly Block[]): string =>
  `${blocks.map(showBlock).join('\n\n')}\n`;

function showBlock(block: Block): string {
  switch (block.kind) {
    case 'title':
      return `# ${proseMarkdown(block.text)}`;
    case 'heading':
      return `${'#'.repeat(block.level)} ${proseMarkdown(block.text)}`;
    case 'paragraph':
      return guarded(showWords(block.text));
    case 'list':
      return block.items
        .map(
          (item, index) => `${block.numbered ? `${index + 1}.` : '-'} ${guarded(showWords(item))}`,
        )
        .join('\n');
    case 'table':
      return showTable(block.head, block.rows);
    case 'warning':
      return `> **Caution: ${proseMarkdown(block.name)}.** ${proseMarkdown(block.text)}`;
    case 'quote':
      return block.lines.map((line) => `> ${guarded(proseMarkdown(line))}`.trimEnd()).join('\n>\n');
    case 'margin':
      return `> *Margin.* ${showWords(block.text)}`;
    case 'picture':
      return `![${proseMarkdown(block.caption)}](${encodeURI(block.file)})`;
    case 'chart':
      return `\`\`\`mermaid\n${block.text}\n\`\`\``;
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
