import type { Terminal } from '@xterm/headless';

type Run = { readonly at: number; readonly text: string; readonly look: string };

const width = 8.4;
const height = 18;

/** The sixteen colors of a terminal, as a dark one shows them. */
const colors =
  '#1d1f21 #e06c75 #98c379 #e5c07b #61afef #c678dd #56b6c2 #d4d7dd #8a8f98 #ff8b94 #b5e08f #ffd68a #8cc8ff #e0a0f0 #7fdbe6 #ffffff'.split(
    ' ',
  );

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Viewers fold plain blanks, whatever `xml:space` says. */
const unfolded = (text: string): string => escaped(text.trimEnd()).replaceAll(' ', '\u00a0');

/** A row in runs of one look, without blanks at its end. */
function runsOf(terminal: Terminal, row: number): readonly Run[] {
  const line = terminal.buffer.active.getLine(terminal.buffer.active.viewportY + row);
  const runs: Run[] = [];
  for (let at = 0; at < terminal.cols; at += 1) {
    const cell = line?.getCell(at);
    if (cell === undefined || cell.getWidth() === 0) continue;
    const marks = [
      cell.isFgPalette() ? `fill="${colors[cell.getFgColor()] ?? colors[7]}"` : '',
      cell.isBold() ? 'font-weight="bold"' : '',
      cell.isDim() ? 'opacity="0.65"' : '',
    ];
    const look = marks.filter((mark) => mark !== '').join(' ');
    const text = cell.getChars() === '' ? ' ' : cell.getChars();
    const last = runs.at(-1);
    if (last?.look === look) runs[runs.length - 1] = { ...last, text: last.text + text };
    else runs.push({ at, text, look });
  }
  return runs.filter(({ text }) => text.trim() !== '');
}

/** What a terminal shows, as a picture of its own text: a row an element, read by anybody's screen reader. */
export function screenSvg(terminal: Terminal, title: string): string {
  const rows = Array.from({ length: terminal.rows }, (_, row) => {
    const spans = runsOf(terminal, row)
      .map(
        ({ at, text, look }) =>
          `<tspan x="${(14 + at * width).toFixed(1)}"${look === '' ? '' : ` ${look}`}>${unfolded(text)}</tspan>`,
      )
      .join('');
    return spans === '' ? '' : `<text y="${24 + row * height}">${spans}</text>\n`;
  }).join('');
  const [wide, high] = [Math.ceil(28 + terminal.cols * width), 22 + terminal.rows * height];
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${wide} ${high}" width="${wide}" height="${high}" role="img" aria-label="${escaped(title)}">
<title>${escaped(title)}</title>
<rect width="${wide}" height="${high}" rx="8" fill="${colors[0]}"/>
<g font-family="ui-monospace, 'DejaVu Sans Mono', Menlo, Consolas, monospace" font-size="14" fill="${colors[7]}">
${rows}</g>
</svg>
`;
}
