import type { At } from '../app/screen.ts';
import { decisionNumber, frameOn, paceAt } from '../app/pages/replay-frames.ts';
import { count } from '../core/text.ts';
import { Ends, Head, Indented, Line } from './parts.tsx';
import { rowsOf } from './room.ts';

type ReplayProps = {
  readonly screen: At<'replay'>;
  readonly rows: number;
  readonly columns: number;
};

/** Columns of the word that begins a line: the longest, and a blank. */
const tag = 9;
/** Rows of the head above a frame. */
const headRows = 2;

/** A session watched again: the decision that had been taken last, as it was known then. */
export function ReplayBody({ screen, rows, columns }: ReplayProps) {
  const { at, recording, typed } = screen;
  const frame = frameOn(recording, at);
  const all = recording.stops.length;
  const turn = recording.turning.includes(at) ? 'ANOTHER LEADS  ' : '';
  const lines = frame === undefined ? [] : [...frame.lines, { tag: '', text: frame.told }];
  return (
    <>
      <Head>
        <Ends
          left={`THEN  ${turn}${frame?.clock ?? 'the beginning'}`}
          right={`decision ${decisionNumber(recording, at)} of ${all}`}
          as="marked"
        />
        <Line>
          {typed === '' ? doing(screen) : `Go to event or time: ${typed}_  Enter goes there.`}
        </Line>
      </Head>
      {fitting(lines, rows - headRows, columns - tag - 3).map((line, index) => (
        // What is told of a frame never changes its place.
        // oxlint-disable-next-line react/no-array-index-key
        <Indented key={index} mark={line.tag.padEnd(tag)}>
          {line.text}
        </Indented>
      ))}
    </>
  );
}

type Lines = readonly { readonly tag: string; readonly text: string }[];

/** As many lines as there are rows for, from the first on. */
function fitting(lines: Lines, rows: number, columns: number): Lines {
  let left = rows;
  return lines.filter(({ text }) => {
    left -= rowsOf(text, columns);
    return left >= 0;
  });
}

const doing = ({ playing, speed, recording, at }: At<'replay'>): string =>
  playing
    ? `Goes on by itself, in ${count(Math.ceil(paceAt(recording, at, speed)), 'second')}.`
    : 'Enter: one decision on, or to the event or time typed before.';
