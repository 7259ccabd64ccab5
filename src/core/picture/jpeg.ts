import { joinedBytes, letters, viewOf, type Piece } from './bytes.ts';
import { turnOf, turnSegment } from './exif.ts';

/** A marker as its piece is called: `E1`. */
const nameOf = (marker: number): string => marker.toString(16).toUpperCase();

/** Markers that stand alone: a restart, or the one for private use. */
const standsAlone = (marker: number): boolean =>
  marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8);

const isFrame = ({ name }: Piece): boolean => /^C[0-35-79-BD-F]$/.test(name);

/**
 * The segments of a JPEG, from its first marker to the one that ends it; what stands behind that is
 * none of the picture. Undefined where it ends before, or is none. Source: ITU-T T.81, annex B.
 */
export function jpegPieces(bytes: Uint8Array): readonly Piece[] | undefined {
  const pieces: Piece[] = [];
  for (let start = 0; start + 1 < bytes.length;) {
    if (bytes[start] !== 0xff) return undefined;
    const marker = bytes[start + 1];
    // A marker may have any number of these before it.
    if (marker === 0xff) {
      start += 1;
      continue;
    }
    if (marker === undefined) return undefined;
    const end = endOfSegment(bytes, start, marker);
    if (end === undefined) return undefined;
    pieces.push({ name: nameOf(marker), start, end });
    if (marker === 0xd9) return isShown(pieces) ? pieces : undefined;
    start = end;
  }
  return undefined;
}

const isShown = (pieces: readonly Piece[]): boolean =>
  pieces.some(isFrame) && pieces.some(({ name }) => name === 'DA');

function endOfSegment(bytes: Uint8Array, start: number, marker: number): number | undefined {
  if (marker === 0xd9 || standsAlone(marker)) return start + 2;
  if (start + 4 > bytes.length) return undefined;
  const length = viewOf(bytes).getUint16(start + 2);
  const end = start + 2 + length;
  if (length < 2 || end > bytes.length) return undefined;
  return marker === 0xda ? endOfScan(bytes, end) : end;
}

/** The dots of a picture go on to the next marker that is neither a restart nor a byte of theirs. */
function endOfScan(bytes: Uint8Array, from: number): number | undefined {
  for (let at = bytes.indexOf(0xff, from); at >= 0; at = bytes.indexOf(0xff, at + 1)) {
    const next = bytes[at + 1];
    if (next === undefined) return undefined;
    const ofTheDots = next === 0x00 || next === 0xff || (next >= 0xd0 && next <= 0xd7);
    if (!ofTheDots) return at;
  }
  return undefined;
}

/**
 * A JPEG with nothing in it but the picture: its dots, its colors, and how it is turned. Where and
 * by what it was taken, remarks, small pictures of it and all behind its end are gone.
 */
export function bareJpeg(bytes: Uint8Array, pieces: readonly Piece[]): Uint8Array {
  const turn = pieces.map((piece) => turnOf(contentOf(bytes, piece))).find((one) => one > 1);
  const [head, rest] = [
    pieces.filter((piece) => piece.name === 'D8' || isJfif(bytes, piece)),
    pieces.filter((piece) => piece.name !== 'D8' && isKept(bytes, piece)),
  ];
  const cut = ({ start, end }: Piece): Uint8Array => bytes.subarray(start, end);
  return joinedBytes([
    ...head.map(cut),
    ...(turn === undefined ? [] : [turnSegment(turn)]),
    ...rest.map(cut),
  ]);
}

const contentOf = (bytes: Uint8Array, { name, start, end }: Piece): Uint8Array =>
  name === 'E1' ? bytes.subarray(start + 4, end) : bytes.subarray(0, 0);

const begins = (bytes: Uint8Array, { start, end }: Piece, mark: string): boolean =>
  letters(bytes, start + 4, Math.min(end, start + 4 + mark.length)) === mark;

const isJfif = (bytes: Uint8Array, piece: Piece): boolean =>
  piece.name === 'E0' && begins(bytes, piece, 'JFIF\0');

/** Of what programs may add, the profile of its colors and how they are told apart are the picture's own. */
function isKept(bytes: Uint8Array, piece: Piece): boolean {
  if (piece.name === 'E2') return begins(bytes, piece, 'ICC_PROFILE\0');
  if (piece.name === 'EE') return begins(bytes, piece, 'Adobe');
  return !/^(E.|FE)$/.test(piece.name);
}
