import { createHash } from 'node:crypto';
import { readLine, type Fingerprint } from '../core/session/chain.ts';
import type { Event, UnknownEvent } from '../core/session/event.ts';
import { parseEvent } from '../core/session/read-event.ts';
import { Header } from '../core/session/header/header.ts';
import { bad, good, type Parsed } from '../core/problem.ts';

/** How the lines of a record are linked. */
export const sha256: Fingerprint = (text) => createHash('sha256').update(text).digest('hex');

/** A line of the file that the story leaves out or cannot vouch for. */
export type Damage = {
  /** 1 is the header. */
  readonly line: number;
  /** `torn`: a write cut off by a power loss; `altered`: bytes changed after they were written. */
  readonly kind: 'torn' | 'altered';
  readonly bytes: number;
};

/** A session file as read: what counts, what was passed over, and where the chain stands. */
export type Recovered = {
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
  readonly damage: readonly Damage[];
  /** The link of the last good line: the next line must hold it. */
  readonly link: string;
  /** The last line lacks its newline. */
  readonly openEnd: boolean;
  /** The file as it stands, what no UTF-8 can be read from included. */
  readonly bytes: Uint8Array;
};

/**
 * Reads a session file and never changes it. A line that was torn is passed over; a line that was
 * altered is passed over and named; a line behind an altered one still counts.
 */
export function readSession(bytes: Uint8Array, file: string): Parsed<Recovered> {
  const lines = splitLines(bytes);
  const openEnd = lines.at(-1)?.bytes !== 0;
  if (!openEnd) lines.pop();
  const [first, ...rest] = lines;
  const head = readLine(first?.text ?? '', '', sha256);
  if (head.kind !== 'whole') return bad(noSession(file, head.kind === 'altered'));
  const header = Header.safeParse(head.value);
  if (!header.success) return bad(noSession(file, false));
  return good({
    header: header.data,
    openEnd,
    bytes,
    ...readEvents(rest, head.link),
  });
}

type RawLine = { readonly text: string; readonly bytes: number };

/** Lines as text; one whose bytes are no UTF-8 becomes text that no link can fit. */
function splitLines(bytes: Uint8Array): RawLine[] {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const lines: RawLine[] = [];
  for (let start = 0; start <= bytes.length;) {
    const found = bytes.indexOf(0x0a, start);
    const end = found < 0 ? bytes.length : found;
    lines.push({ text: decodeLine(decoder, bytes.subarray(start, end)), bytes: end - start });
    start = end + 1;
  }
  return lines;
}

function decodeLine(decoder: InstanceType<typeof TextDecoder>, bytes: Uint8Array): string {
  try {
    return decoder.decode(bytes);
  } catch {
    // Shown as damage: the marks put in for the bytes that are none make the link fail.
    return `\ufffd${new TextDecoder().decode(bytes)}`;
  }
}

function readEvents(lines: readonly RawLine[], headLink: string) {
  const events: (Event | UnknownEvent)[] = [];
  const damage: Damage[] = [];
  let link = headLink;
  lines.forEach(({ text, bytes }, index) => {
    const line = index + 2;
    const read = readLine(text, link, sha256);
    const damaged = (kind: Damage['kind']) => damage.push({ line, kind, bytes });
    if (read.kind === 'torn') return damaged('torn');
    if (read.kind === 'altered') return damaged('altered');
    const event = parseEvent(read.value);
    const inOrder = event !== undefined && event.n > (events.at(-1)?.n ?? 0);
    if (!inOrder) return damaged('altered');
    // Behind an altered or missing line: it counts, but the line before it is not what it was.
    if (read.kind === 'broken-chain') tellAltered(damage, line, bytes);
    events.push(event);
    link = read.link;
    return undefined;
  });
  return { events, damage, link };
}

/** The line before is not what this one was written behind: it was altered, however it looks now. */
function tellAltered(damage: Damage[], line: number, bytes: number): void {
  const before = damage.at(-1);
  if (before?.line === line - 1) damage[damage.length - 1] = { ...before, kind: 'altered' };
  else damage.push({ line, kind: 'altered', bytes });
}

const noSession = (file: string, altered: boolean) => ({
  code: altered ? 'altered-header' : 'not-a-session',
  file,
  message: altered
    ? 'The first line of this session has been altered.'
    : 'This is no session file of Droplight, or its first line is torn.',
  mend: altered
    ? 'Use a copy that was not changed.'
    : 'Name a .jsonl file from the sessions folder.',
});
