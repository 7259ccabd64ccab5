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
  const longest = Math.max(...lines.split('\n').map(widthOf));
  return `${lines}\n${mark.repeat(Math.min(columns, longest))}`;
};

const widthOf = (text: string): number => Array.from(text).length;

const wrapped = (text: string, first = '', rest = ''): string =>
  wrappedIn(columns, cleanLine(text), first, rest).join('\n');

/** Words filled into lines; one that is longer than a line stands alone in it. */
function wrappedIn(width: number, text: string, first = '', rest = ''): readonly string[] {
  const lines: string[] = [];
  let line = first;
  let bare = true;
  for (const word of text.split(' ')) {
    const longer = bare ? `${line}${word}` : `${line} ${word}`;
    if (!bare && widthOf(longer) > width) {
      lines.push(line);
      line = `${rest}${word}`;
    } else line = longer;
    bare = false;
  }
  return [...lines, line].map((one) => one.trimEnd());
}

/** Columns side by side, cells folded, where they can be; else a row as lines of name and value. */
function showTable({ head, rows }: Extract<Block, { kind: 'table' }>): string {
  const [top, ...cells] = [head, ...rows].map((row) => row.map(cleanLine));
  if (top === undefined) return '';
  const widths = fittingWidths([top, ...cells]);
  return widths === undefined
    ? cells.map((row) => stacked(top, row)).join('\n\n')
    : [top, ...cells].map((row) => besideEachOther(row, widths)).join('\n');
}

/** Between two columns. */
const gap = 2;

/** The width of each column, the widest made narrower until all fit; none where a word would not. */
function fittingWidths(table: readonly (readonly string[])[]): readonly number[] | undefined {
  const across = (measure: (cell: string) => number): readonly number[] =>
    (table[0] ?? []).map((_, column) =>
      Math.max(...table.map((row) => measure(row[column] ?? ''))),
    );
  const least = across((cell) => Math.max(...cell.split(' ').map(widthOf)));
  let widths = across(widthOf);
  while (widths.reduce((sum, width) => sum + width + gap, -gap) > columns) {
    const widest = widths.indexOf(Math.max(...widths));
    widths = widths.map((width, column) => (column === widest ? width - 1 : width));
  }
  return widths.every((width, column) => width >= (least[column] ?? 0)) ? widths : undefined;
}

function besideEachOther(row: readonly string[], widths: readonly number[]): string {
  const cells = widths.map((width, column) => wrappedIn(width, row[column] ?? ''));
  const lines = Array.from({ length: Math.max(...cells.map((cell) => cell.length)) }, (_, at) =>
    widths
      .map((width, column) => {
        const part = cells[column]?.[at] ?? '';
        return part + ' '.repeat(width - widthOf(part));
      })
      .join(' '.repeat(gap))
      .trimEnd(),
  );
  return lines.join('\n');
}

const stacked = (head: readonly string[], row: readonly string[]): string =>
  row
    .flatMap((cell, column) =>
      cell === ''
        ? []
        : [wrapped(`${head[column] ?? ''}: ${cell}`, column === 0 ? '' : '  ', '    ')],
    )
    .join('\n');
