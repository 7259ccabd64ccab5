import { at } from '../at.ts';
import { joinedPieces, letters, type Piece } from './bytes.ts';

/**
 * The blocks of a GIF, its head the first of them; what stands behind the last is none of the
 * picture. Undefined where it ends before, or is none. Source: GIF89a, appendix B.
 */
export function gifPieces(bytes: Uint8Array): readonly Piece[] | undefined {
  if (!/^GIF8[79]a$/.test(letters(bytes, 0, 6))) return undefined;
  const head = 13 + colors(bytes[10]);
  const pieces: Piece[] = [{ name: 'head', start: 0, end: head }];
  for (let start = head; start < bytes.length;) {
    const block = blockAt(bytes, start);
    if (block === undefined) return undefined;
    pieces.push(block);
    if (block.name === 'end')
      return pieces.some(({ name }) => name === 'dots') ? pieces : undefined;
    start = block.end;
  }
  return undefined;
}

/** Bytes of the table of colors that a byte of marks tells of; none where it tells of none, or is not there. */
const colors = (marks = 0): number => (marks & 0x80 ? 3 * 2 ** ((marks & 0x07) + 1) : 0);

function blockAt(bytes: Uint8Array, start: number): Piece | undefined {
  const kind = bytes[start];
  if (kind === 0x3b) return { name: 'end', start, end: start + 1 };
  if (kind === 0x2c) {
    const end = endOfParts(bytes, start + 11 + colors(bytes[start + 9]));
    return end === undefined ? undefined : { name: 'dots', start, end };
  }
  if (kind !== 0x21) return undefined;
  const end = endOfParts(bytes, start + 2);
  return end === undefined ? undefined : { name: extensionName(bytes, start), start, end };
}

/** Parts follow one another, each behind its length, to one that is empty. */
function endOfParts(bytes: Uint8Array, from: number): number | undefined {
  for (let start = from; start < bytes.length;) {
    const length = at(bytes, start);
    start += 1 + length;
    if (length === 0) return start;
  }
  return undefined;
}

/** How the next dots are shown, how often all of them are; anything else says something else. */
function extensionName(bytes: Uint8Array, start: number): string {
  const kind = bytes[start + 1];
  if (kind === 0xf9) return 'control';
  const owner = letters(bytes, start + 3, start + 14);
  return kind === 0xff && /^(NETSCAPE2\.0|ANIMEXTS1\.0)$/.test(owner) ? 'loop' : 'other';
}

/** A GIF with nothing in it but the picture. */
export const bareGif = (bytes: Uint8Array, pieces: readonly Piece[]): Uint8Array =>
  joinedPieces(
    bytes,
    pieces.filter(({ name }) => name !== 'other'),
  );
