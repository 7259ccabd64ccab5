import { cleanRow, safeJson } from '../text.ts';
import type { Frame } from './frames.ts';

const columns = 80;
const rows = 24;
/** Columns of the tag that begins a line. */
const tag = 10;

/** Words folded at blanks; a word longer than the room is cut into pieces. */
function folded(text: string, room: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((one) => piecesOf(one, room)))
    if (line === '') line = word;
    else if (line.length + 1 + word.length <= room) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  return line === '' ? lines : [...lines, line];
}

const piecesOf = (word: string, room: number): readonly string[] =>
  word.length <= room
    ? [word]
    : Array.from({ length: Math.ceil(word.length / room) }, (_, at) =>
        word.slice(at * room, (at + 1) * room),
      );

/** A frame as lines of a page; `place` says which of how many it is. */
function frameLines({ clock, lines, told }: Frame, place: string): readonly string[] {
  return [
    `${clock}${' '.repeat(Math.max(2, columns - clock.length - place.length))}${place}`,
    '-'.repeat(columns),
    ...lines.flatMap((line) =>
      folded(line.text, columns - tag).map(
        (text, index) => `${(index === 0 ? line.tag : '').padEnd(tag)}${text}`,
      ),
    ),
    '',
    ...folded(told, columns),
  ].map(cleanRow);
}

const placeOf = (index: number, all: number): string => `decision ${index + 1} of ${all}`;

/** The whole replay to read, a frame a decision. */
export const replayText = (title: string, frames: readonly Frame[]): string =>
  [
    title,
    ...frames.map((frame, index) => frameLines(frame, placeOf(index, frames.length)).join('\n')),
  ].join('\n\n');

/** Signs a reader takes in a second: some 250 words a minute (common practice, no source). */
const signsASecond = 25;
const leastSeconds = 3;

/** Seconds that a frame takes to read; undefined for none. */
export const secondsToRead = (frame: Frame | undefined): number | undefined =>
  frame && secondsFor(frameLines(frame, ''));

const secondsFor = (lines: readonly string[]): number =>
  Math.max(leastSeconds, Math.round((10 * lines.join('').trim().length) / signsASecond) / 10);

/**
 * The replay as a recording of a terminal: JSON lines, the first the head, each other `[seconds, "o",
 * text]`. The form is that of asciicast, version 2 (from memory). A frame stays as long as it takes to
 * read; the clock in it is the session's own.
 */
export function replayCast(title: string, frames: readonly Frame[], began: number): string {
  let seconds = 0;
  const shown = frames.map((frame, index) => {
    const lines = frameLines(frame, placeOf(index, frames.length)).slice(0, rows);
    const at = seconds;
    seconds += secondsFor(lines);
    return [at, 'o', `${clear}${lines.join('\r\n')}`];
  });
  const head = { version: 2, width: columns, height: rows, timestamp: Math.floor(began), title };
  return [head, ...shown, [seconds, 'o', '\r\n']].map((line) => `${safeJson(line)}\n`).join('');
}

/** Erases the screen and goes to its first place (ECMA-48). */
const clear = '\u001b[2J\u001b[H';
