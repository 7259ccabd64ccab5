import type { Command, KeyPress } from './command.ts';
import { isDigit } from './tokens.ts';

/** Lines that have a number at one time: those around the cursor, so that a number is one that is seen. */
const block = 9;

/** The first line that has a number now. */
export const blockStart = (cursor: number): number =>
  Math.floor(Math.max(0, cursor) / block) * block;

/** The number that picks a line now; none for lines of another block. */
export function lineNumber(index: number, cursor: number): number | undefined {
  const number = index - blockStart(cursor) + 1;
  return number >= 1 && number <= block ? number : undefined;
}

/** The line that a digit picks now; it may lie past the last one. */
const lineOf = (cursor: number, token: string): number =>
  isDigit(token) && token !== '0' ? blockStart(cursor) + Number(token) - 1 : -1;

/**
 * Moves a cursor over a list of lines, by one, by a block or to an end; it stops at both ends. Where no
 * line is marked (-1), only a key that moves down marks one.
 */
export function moved(cursor: number, command: Command, lines: number): number {
  const to = target(cursor, command, lines);
  return cursor < 0 && to < 0 ? cursor : Math.max(0, Math.min(lines - 1, to));
}

function target(cursor: number, command: Command, lines: number): number {
  switch (command) {
    case 'up':
      return cursor - 1;
    case 'down':
      return cursor + 1;
    case 'page-up':
      return cursor - block;
    case 'page-down':
      return cursor + block;
    case 'first-line':
      return 0;
    case 'last-line':
      return lines - 1;
    default:
      return cursor;
  }
}

/** The place of the line that a key marks by its number; -1 for none. */
export const marked = (cursor: number, { token }: KeyPress, lines: number): number => {
  const line = lineOf(cursor, token);
  return line < lines ? line : -1;
};

/** The line that was picked: by its number, or the one under the cursor. */
export function picked<Line>(
  cursor: number,
  press: KeyPress,
  lines: readonly Line[],
): Line | undefined {
  if (press.command === 'choose') return lines[cursor];
  return press.command === 'pick-line' ? lines[marked(cursor, press, lines.length)] : undefined;
}
