import type { Check } from '../core/tree/model.ts';

/** Rows that text takes when it is folded at words into a column of some width. */
export function rowsOf(text: string, width: number): number {
  let rows = 1;
  let used = 0;
  for (const word of text.split(/\s+/)) {
    const long = Math.min(word.length, width);
    if (used > 0 && used + 1 + long > width) {
      rows += 1;
      used = long;
    } else used += (used > 0 ? 1 : 0) + long;
  }
  return rows;
}

/** How much of a check's words there is room for: `i` shows all of them at any size. */
export type Room = {
  readonly cautions: 'fold' | 'cut' | 'names';
  readonly how: 'fold' | 'cut';
  readonly healthy: boolean;
};

/** From roomy to tight: cautions lose their length first, never their names. */
const rooms: readonly Room[] = [
  { cautions: 'fold', how: 'fold', healthy: true },
  { cautions: 'cut', how: 'fold', healthy: true },
  { cautions: 'cut', how: 'fold', healthy: false },
  { cautions: 'names', how: 'fold', healthy: false },
  { cautions: 'names', how: 'cut', healthy: false },
];

type Words = {
  readonly check: Check;
  readonly cautions: readonly string[];
  readonly healthy: string;
  /** Rows below the steps: results, the reading. */
  readonly below: number;
};

/** The roomiest way to show a check in the rows there are. */
export function roomFor(words: Words, columns: number, rows: number): Room {
  const tightest: Room = { cautions: 'names', how: 'cut', healthy: false };
  return rooms.find((room) => rowsIn(words, room, columns) <= rows) ?? tightest;
}

function rowsIn({ check, cautions, healthy, below }: Words, room: Room, columns: number): number {
  const folded = (texts: readonly string[], margin: number): number =>
    texts.reduce((sum, text) => sum + rowsOf(text, columns - margin), 0);
  const forCautions =
    room.cautions === 'names'
      ? Math.min(1, cautions.length)
      : room.cautions === 'cut'
        ? cautions.length
        : folded(cautions, 4);
  const forHow = room.how === 'cut' ? check.how.length : folded(check.how, 7);
  return 1 + forCautions + forHow + (room.healthy ? rowsOf(healthy, columns - 11) : 0) + below;
}
