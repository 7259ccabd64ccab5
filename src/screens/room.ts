import wrapAnsi from 'wrap-ansi';
import { cleanRow } from '../core/text.ts';

/** Rows that text takes when it is folded into a column of some width, as Ink folds it. */
export const rowsOf = (text: string, width: number): number =>
  wrapAnsi(cleanRow(text), width, { trim: false, hard: true }).split('\n').length;

/** How much of a step's words there is room for: `i` shows all of them at any size. */
export type Room = {
  readonly cautions: 'fold' | 'cut' | 'names';
  readonly how: 'fold' | 'cut';
  readonly aside: boolean;
};

/** From roomy to tight: cautions lose their length first, never their names. */
const rooms: readonly Room[] = [
  { cautions: 'fold', how: 'fold', aside: true },
  { cautions: 'cut', how: 'fold', aside: true },
  { cautions: 'cut', how: 'fold', aside: false },
  { cautions: 'names', how: 'fold', aside: false },
  { cautions: 'names', how: 'cut', aside: false },
];

type Words = {
  readonly how: readonly string[];
  readonly cautions: readonly string[];
  /** The cautions by name, in one line that folds. */
  readonly names: string;
  /** What can be done without first: what is healthy, where a part is. */
  readonly aside: string;
  /** Rows below the steps: results, the reading, what Enter does. */
  readonly below: number;
};

/** The roomiest way to show a step in the rows there are. */
export function roomFor(words: Words, columns: number, rows: number): Room {
  const tightest: Room = { cautions: 'names', how: 'cut', aside: false };
  return rooms.find((room) => rowsIn(words, room, columns) <= rows) ?? tightest;
}

function rowsIn(words: Words, room: Room, columns: number): number {
  const { how, cautions, names, aside, below } = words;
  const folded = (texts: readonly string[], margin: number): number =>
    texts.reduce((sum, text) => sum + rowsOf(text, columns - margin), 0);
  const forCautions =
    room.cautions === 'names'
      ? rowsOf(names, columns - 4) * Math.min(1, cautions.length)
      : room.cautions === 'cut'
        ? cautions.length
        : folded(cautions, 4);
  const forHow = room.how === 'cut' ? how.length : folded(how, 7);
  return (
    1 +
    forCautions +
    forHow +
    (room.aside && aside !== '' ? rowsOf(aside, columns - 11) : 0) +
    below
  );
}
