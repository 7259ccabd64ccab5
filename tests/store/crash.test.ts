import { describe, expect, test } from 'vitest';
import { Journal } from '../../src/store/journal.ts';
import { readSession } from '../../src/store/recover.ts';
import { MemoryFiles } from '../helpers/memory-files.ts';
import { chained, eventsOf, note } from '../helpers/session-file.ts';
import { headerFor, stampAt } from '../helpers/story.ts';

const path = 'job.jsonl';
const lines = chained([headerFor(), note(1), note(2, '5 W – über 1 Ω cold'), note(3)]);
const whole = Buffer.from(lines.join(''));
const header = Buffer.byteLength(lines[0] ?? '');
/** Bytes after which each line is on the disk with its newline, and may have been acknowledged. */
const ends = lines.map((_, index) => Buffer.byteLength(lines.slice(0, index + 1).join('')));
const acknowledgedAt = (cut: number) => [1, 2, 3].filter((n) => (ends[n] ?? Infinity) <= cut);

/** The file opened for writing after a crash, with one more event: what it reads back as. */
function goOn(bytes: Uint8Array) {
  const files = new MemoryFiles({ [path]: bytes });
  const handle = files.openAppend(path);
  const open = bytes.at(-1) !== 10;
  if (open) files.write(handle, Buffer.from('\n'));
  const read = readSession(files.read(path), path);
  if (read.kind === 'bad') return { before: [], after: [], n: 0 };
  const { bytes: found, link, events } = read.value;
  const before = events.map((event) => event.n);
  const n = (before.at(-1) ?? 0) + 1;
  const opened = { path, handle, bytes: found, link, assureLock: () => {} };
  const journal = new Journal(files, opened, { kept: () => {}, trouble: () => {} });
  journal.append({ n, ...stampAt(n), kind: 'resumed', torn: 1 });
  journal.settle();
  return { before, after: eventsOf(files.read(path)).map((event) => event.n), n };
}

/** Every cut after which something acknowledged was lost, or the next event could not be read. */
const failures = (tail: Uint8Array, blank = 0) =>
  Array.from({ length: whole.length - header + 1 }, (_, index) => header + index).flatMap((cut) => {
    const image = Buffer.concat([whole.subarray(0, cut), tail]);
    const spared = Math.max(header, cut - blank);
    image.fill(0, spared, cut);
    const { before, after, n } = goOn(image);
    const lost = acknowledgedAt(spared).filter((one) => !before.includes(one));
    const wentOn = after.join() === [...before, n].join();
    return lost.length === 0 && wentOn ? [] : [{ cut, lost, after, n }];
  });

/** A file whose last line was torn in the middle of a letter of several bytes. */
const tornLetter = whole.subarray(0, whole.indexOf(Buffer.from('über')) + 1);

describe('a file cut off at any byte by a crash', () => {
  test.each([
    ['nothing', Buffer.alloc(0)],
    ['zeros', Buffer.alloc(37)],
    ['a sector of zeros and more', Buffer.alloc(700)],
    ['garbage with a newline', Buffer.from('\u0001x}\n"y\ufffd')],
    ['the last line again', Buffer.from(lines.at(-1) ?? '')],
    ['the line before again', Buffer.from(lines.at(-2) ?? '')],
    ['bytes that are no text', Buffer.from([0xff, 0xc3, 0x28, 0x0a, 0x80])],
  ])('with %s behind the cut loses nothing acknowledged, and goes on', (_, tail) => {
    expect(failures(tail)).toEqual([]);
  });

  test('with its last bytes turned to zeros likewise', () => {
    expect(failures(Buffer.alloc(0), 60)).toEqual([]);
  });

  test('crashed twice in a row likewise', () => {
    expect(failures(Buffer.from(`{"n":9,"torn\n${'\0'.repeat(9)}\n{"n":`))).toEqual([]);
  });

  test('tells how many bytes were torn, also within a letter', () => {
    const read = readSession(tornLetter, path);

    expect(read).toMatchObject({
      value: { damage: [{ kind: 'torn', bytes: tornLetter.length - (ends[1] ?? 0) }] },
    });
  });

  test('keeps torn bytes as they were when the file has to be written anew', async () => {
    const files = new MemoryFiles({ [path]: Buffer.concat([tornLetter, Buffer.from('\n')]) });
    const read = readSession(files.read(path), path);
    if (read.kind === 'bad') throw new Error('no session');
    const { bytes, link } = read.value;
    const opened = { path, handle: files.openAppend(path), bytes, link, assureLock: () => {} };
    const journal = new Journal(files, opened, { kept: () => {}, trouble: () => {} });
    files.refuse = ({ name }) => (name === 'sync' ? 'EIO' : undefined);
    journal.append(note(2));
    await expect(journal.settled()).rejects.toMatchObject({ code: 'EIO' });

    files.refuse = () => undefined;
    await journal.settled();

    expect(Buffer.from(files.read(path)).subarray(0, tornLetter.length)).toEqual(tornLetter);
  });
});
