import type { KeyPress } from './command.ts';
import { moved } from './cursor.ts';

/** A list that is narrowed by typing: what is sought, and the cursor among the lines that have it. */
export type Search = { readonly cursor: number; readonly sought: string };

export const nothingSought: Search = { cursor: 0, sought: '' };

/** The lines whose words hold every word that was typed, in any order, upper case or lower. */
export function matching<Line>(
  lines: readonly Line[],
  sought: string,
  wordsOf: (line: Line) => string,
): readonly Line[] {
  const parts = sought
    .toLowerCase()
    .split(/\s+/)
    .filter((part) => part !== '');
  return lines.filter((line) => {
    const words = wordsOf(line).toLowerCase();
    return parts.every((part) => words.includes(part));
  });
}

/** The search after a key that narrows it or moves the cursor among so many lines. */
export function searched(search: Search, press: KeyPress, lines: number): Search {
  if (press.command === 'type') return { cursor: 0, sought: search.sought + press.token };
  if (press.command === 'erase')
    return { cursor: 0, sought: Array.from(search.sought).slice(0, -1).join('') };
  return { ...search, cursor: moved(search.cursor, press.command, lines) };
}
