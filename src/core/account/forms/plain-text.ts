import { never } from '../../problem.ts';
import { clean, cleanLine } from '../../text.ts';
import type { Block, Words } from '../block.ts';

/** Columns of a line, as mail and forums leave it alone. */
const columns = 72;

/** The account as bare text: no markup, no escape code, lines of at most 72 columns but for a longer word. */
export const showText = (blocks: readonly Block[]): string =>
  `${blocks
    .map(showBlock)
    .filter((text) => text !== '')
    .join('\n\n')}\n`;

function showBlock(block: Block): string {
  switch (block.kind) {
    case 'title':
      return underlined(cleanLine(block.text), '=');
    case 'heading':
      return block.level === 2
        ? underlined(cleanLine(block.text).toUpperCase(), '-')
        : cleanLine(block.text);
    case 'paragraph':
      return wrapped(wordsOf(block.text));
    case 'list':
      return block.items
        .map((item, index) =>
          wrapped(wordsOf(item), block.numbered ? `${index + 1}. ` : '- ', '  '),
        )
        .join('\n');
    case 'table':
      return showTable(block);
    case 'warning':
      return wrapped(`CAUTION, ${block.name}: ${block.text}`, '! ', '! ');
    case 'quote':
      return block.lines.map((line) => wrapped(clean(line), '  ', '  ')).join('\n');
    case 'margin':
      return wrapped(`In the margin: ${wordsOf(block.text)}`, '  | ', '  | ');
    case 'picture':
      return wrapped(`[picture: ${block.caption} (${block.file})]`);
    case 'chart':
      return '';
    default:
      return never(block);
  }
}

const wordsOf = (words: Words): string =>
  typeof words === 'string'
    ? words
    : words.map((part) => (typeof part === 'string' ? part : part.text)).join('');

/** A head and a line under it, both folded alike. */
const underlined = (text: string, mark: string): string => {
  const lines = wrapped(text);
  const longest = Math.max(...lines.split('\n').map((line) => Array.from(line).length));
  return `${lines}\n${mark.repeat(Math.min(columns, longest))}`;
};

function wrapped(text: string, first = '', rest = ''): string {
  const lines: string[] = [];
  let line = first;
  let bare = true;
  for (const word of cleanLine(text).split(' ')) {
    const longer = bare ? `${line}${word}` : `${line} ${word}`;
    if (!bare && Array.from(longer).length > columns) {
      lines.push(line);
      line = `${rest}${word}`;
    } else line = longer;
    bare = false;
  }
  return [...lines, line].map((one) => one.trimEnd()).join('\n');
}

/** Columns side by side where they fit; else each row as its first cell and the others named under it. */
function showTable({ head, rows }: Extract<Block, { kind: 'table' }>): string {
  const all = [head, ...rows].map((row) => row.map(cleanLine));
  const widths = head.map((_, column) =>
    Math.max(...all.map((row) => Array.from(row[column] ?? '').length)),
  );
  const whole = widths.reduce((sum, width) => sum + width + 2, -2);
  if (whole > columns) return stacked(head, rows);
  return all
    .map((row) =>
      row
        .map((cell, column) => cell + ' '.repeat((widths[column] ?? 0) - Array.from(cell).length))
        .join('  ')
        .trimEnd(),
    )
    .join('\n');
}

const stacked = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  rows
    .map((row) => {
      const cells = row.map(cleanLine);
      const told = cells.flatMap((cell, column) => {
        const name = cleanLine(head[column] ?? '').toLowerCase();
        return cell === '' || column === 0 ? [] : [`${name}: ${cell}`];
      });
      return wrapped(`${cells[0] ?? ''}  ${told.join('; ')}`, '', '    ');
    })
    .join('\n');
