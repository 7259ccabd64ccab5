import type { Terminal } from '@xterm/headless';
import { boxAt, element, escapeXml } from '../../src/core/drawing/xml.ts';

type Look = Readonly<Record<string, string | undefined>>;

type Run = { readonly at: number; readonly text: string; readonly look: Look };

const width = 8.4;
const height = 18;

/** The sixteen colors of a terminal, as a dark one shows them. */
const colors =
  '#1d1f21 #e06c75 #98c379 #e5c07b #61afef #c678dd #56b6c2 #d4d7dd #8a8f98 #ff8b94 #b5e08f #ffd68a #8cc8ff #e0a0f0 #7fdbe6 #ffffff'.split(
    ' ',
  );

/** Viewers fold plain blanks, whatever `xml:space` says. */
const unfolded = (text: string): string => text.trimEnd().replaceAll(' ', '\u00a0');

const sameLook = (one: Look, other: Look): boolean =>
  Object.keys(one).every((key) => one[key] === other[key]);

/** A row in runs of one look; those of blanks alone are left out. */
function runsOf(terminal: Terminal, row: number): readonly Run[] {
  const line = terminal.buffer.active.getLine(terminal.buffer.active.viewportY + row);
  const runs: Run[] = [];
  for (let at = 0; at < terminal.cols; at += 1) {
    const cell = line?.getCell(at);
    if (cell === undefined || cell.getWidth() === 0) continue;
    const look = {
      fill: cell.isFgPalette() ? colors[cell.getFgColor()] : undefined,
      'font-weight': cell.isBold() ? 'bold' : undefined,
      opacity: cell.isDim() ? '0.65' : undefined,
    };
    const text = cell.getChars() === '' ? ' ' : cell.getChars();
    const last = runs.at(-1);
    if (last !== undefined && sameLook(last.look, look))
      runs[runs.length - 1] = { ...last, text: last.text + text };
    else runs.push({ at, text, look });
  }
  return runs.filter(({ text }) => text.trim() !== '');
}

const rowOf = (terminal: Terminal, row: number): string => {
  const spans = runsOf(terminal, row).map(({ at, text, look }) =>
    element('tspan', { x: 14 + at * width, ...look }, escapeXml(unfolded(text))),
  );
  return spans.length === 0 ? '' : `${element('text', { y: 24 + row * height }, spans.join(''))}\n`;
};

/** What a terminal shows, as a picture of its own text. */
export function screenSvg(terminal: Terminal, title: string): string {
  const rows = Array.from({ length: terminal.rows }, (_, row) => rowOf(terminal, row)).join('');
  const [wide, high] = [Math.ceil(28 + terminal.cols * width), 22 + terminal.rows * height];
  const font = {
    'font-family': "ui-monospace, 'DejaVu Sans Mono', Menlo, Consolas, monospace",
    'font-size': 14,
    fill: colors[7],
  };
  const inside = [
    element('title', {}, escapeXml(title)),
    boxAt([0, 0, wide, high], { rx: 8, fill: colors[0] }),
    element('g', font, `\n${rows}`),
  ];
  const size = { viewBox: `0 0 ${wide} ${high}`, width: wide, height: high };
  const root = { xmlns: 'http://www.w3.org/2000/svg', ...size, role: 'img', 'aria-label': title };
  return `${element('svg', root, `\n${inside.join('\n')}\n`)}\n`;
}
