import type { KeyPress } from './command.ts';
import { moved } from './cursor.ts';
import type { Search } from './sought.ts';

/** The search after a key that narrows it or moves the cursor among so many lines. */
export function searched(search: Search, press: KeyPress, lines: number): Search {
  if (press.command === 'type') return { cursor: 0, sought: search.sought + press.token };
  if (press.command === 'erase')
    return { cursor: 0, sought: Array.from(search.sought).slice(0, -1).join('') };
  return { ...search, cursor: moved(search.cursor, press.command, lines) };
}
