import type { Token } from './tokens.ts';
import type { Command, KeyPress } from './command.ts';

/** The keys of the lines of a list, first line first. No `b`: it goes back. */
export const lineKeys: readonly Token[] = Array.from('123456789acdefghijklmnopqrstuvwxyz');

/** Moves a cursor over a list of lines; it stops at both ends. */
export function moved(cursor: number, command: Command, lines: number): number {
  const step = command === 'up' ? -1 : command === 'down' ? 1 : 0;
  return Math.max(0, Math.min(lines - 1, cursor + step));
}

/** The line that was picked: by its key, or the one under the cursor. */
export function picked<Line>(
  cursor: number,
  { command, token }: KeyPress,
  lines: readonly Line[],
): Line | undefined {
  if (command === 'choose') return lines[cursor];
  return command === 'pick-line' ? lines[lineKeys.indexOf(token)] : undefined;
}
