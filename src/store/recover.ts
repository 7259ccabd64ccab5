import { createHash } from 'node:crypto';
import { readLine, type Fingerprint, type Link } from '../core/session/record/chain.ts';
import type { Event, UnknownEvent } from '../core/session/event.ts';
import { parseEvent } from '../core/session/read-event.ts';
import type { Damage } from '../core/session/record/damage.ts';
import type { Header } from '../core/session/header/header.ts';
import { treeOf } from '../core/session/header/walked-tree.ts';
import type { Written } from '../core/tree/written/written.ts';
import { shelved, type Shelf } from './shelf.ts';
import { checkLinks } from '../core/tree/links/links.ts';
import { bad, good, type Parsed, type Problem } from '../core/problem.ts';

/** How the lines of a record are linked. */
export const sha256: Fingerprint = (text) => createHash('sha256').update(text).digest('hex');

/** A session file as read: what counts, what was passed over, and where the chain stands. */
export type Recovered = {
  readonly header: Header;
  readonly events: readonly (Event | UnknownEvent)[];
  readonly damage: readonly Damage[];
  /** The link of the last good line: the next line must hold it. */
  readonly link: string;
  /** The link of each good line, the header's first. */
  readonly links: readonly { readonly line: number; readonly link: string }[];
  /** The last line lacks its newline. */
  readonly openEnd: boolean;
  /** The file as it stands, what no UTF-8 can be read from included. */
  readonly bytes: Uint8Array;
};

/**
 * Reads a session file and never changes it. A line that was torn is passed over; a line that was
 * altered is passed over and named; a line behind an altered one still counts.
 */
export function readSession(
  bytes: Uint8Array,
  file: string,
  shelf: Shelf = new Map(),
): Parsed<Recovered> {
  const lines = splitLines(bytes);
  const openEnd = lines.at(-1)?.bytes !== 0;
  if (!openEnd) lines.pop();
  const [first, ...rest] = lines;
  const text = first?.text ?? '';
  const head = readLine(text, '', sha256);
  const header = readHeader(head, { text, file, shelf });
  if (header.kind === 'bad') return header;
  const { events, damage, links } = readEvents(rest, head.kind === 'whole' ? head.link : '');
  const ends = lines.findIndex(({ changedEnd }) => changedEnd);
  const changed: Damage = { line: ends + 1, kind: 'line-ends', bytes: 0 };
  return good({
    header: header.value,
    openEnd,
    bytes,
    events,
    damage: ends < 0 ? damage : [...damage, changed],
    link: links.at(-1)?.link ?? '',
    links,
  });
}

type First = { readonly text: string; readonly file: string; readonly shelf: Shelf };

function readHeader(head: Link, { text, file, shelf }: First): Parsed<Header> {
  if (isNewer(text)) return bad(refused('newer-session', file));
  if (head.kind === 'torn') return bad(refused('not-a-session', file));
  if (head.kind !== 'whole') return bad(refused('altered-header', file));
  const header = shelved(head.value, shelf);
  if (header === undefined) return bad(refused('unknown-header', file));
  const { tree, trees } = header;
  const own = Object.hasOwn(trees, tree) ? trees[tree] : undefined;
  if (own === undefined) return bad(refused('unusable-header', file));
  return isUsable(own, file) ? good(header) : bad(refused('unusable-header', file));
}

/** Trees that were looked through already: the same one stands in the header of every job walked by it. */
const usable = new WeakMap<Written, boolean>();

function isUsable(written: Written, file: string): boolean {
  const known = usable.get(written) ?? checkLinks(treeOf(written), file).length === 0;
  usable.set(written, known);
  return known;
}

/** A later version may link its lines in another way: its number is looked at before anything else. */
function isNewer(text: string): boolean {
  const format = /^\{"format":(\d{1,9}),/.exec(text)?.[1];
  return format !== undefined && Number(format) > 1;
}

type RawLine = {
  readonly text: string;
  readonly bytes: number;
  /** A return before the newline, or a mark at the beginning: no line of ours has either. */
  readonly changedEnd: boolean;
};

/** Lines as text; one whose bytes are no UTF-8 becomes text that no link can fit. */
function splitLines(bytes: Uint8Array): RawLine[] {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  const lines: RawLine[] = [];
  for (let start = 0; start <= bytes.length;) {
    const newline = bytes.indexOf(0x0a, start);
    const end = newline < 0 ? bytes.length : newline;
    const found = decodeLine(decoder, bytes.subarray(start, end));
    const text = (start === 0 ? found.replace(/^\ufeff/, '') : found).replace(/\r$/, '');
    lines.push({ text, bytes: end - start, changedEnd: text.length !== found.length });
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
  const links = [{ line: 1, link: headLink }];
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
    if (read.kind === 'broken-chain') {
      if (isBehindGap(damage, line, events, event)) damaged('cut');
      else tellAltered(damage, line, bytes);
    }
    events.push(event);
    link = read.link;
    links.push({ line, link });
    return undefined;
  });
  return { events, damage, links };
}

/** The line before is good, and the numbers of events leave some out: lines were taken out between. */
const isBehindGap = (
  damage: readonly Damage[],
  line: number,
  events: Recovered['events'],
  { n }: { readonly n: number },
): boolean => damage.at(-1)?.line !== line - 1 && n > (events.at(-1)?.n ?? 0) + 1;

/** The line before is not what this one was written behind: it was altered, however it looks now. */
function tellAltered(damage: Damage[], line: number, bytes: number): void {
  const before = damage.at(-1);
  if (before?.line === line - 1) damage[damage.length - 1] = { ...before, kind: 'altered' };
  else damage.push({ line, kind: 'altered', bytes });
}

const refusals = {
  'newer-session': [
    'This session was made by a newer version of Droplight.',
    'Install that version to open it.',
  ],
  'not-a-session': [
    'This is no session file of Droplight, or its first line is torn.',
    'Name a .jsonl file from the sessions folder.',
  ],
  'altered-header': [
    'The first line of this session has been altered.',
    'Use a copy that was not changed.',
  ],
  'unknown-header': [
    'The first line of this session is as it was written, and this version cannot read it.',
    'Open it with the version that made it.',
  ],
  'unusable-header': [
    'The tree in the first line of this session cannot be walked.',
    'Use a copy that Droplight wrote.',
  ],
} as const;

function refused(code: keyof typeof refusals, file: string): Problem {
  const [message, mend] = refusals[code];
  return { code, file, message, mend };
}
