import { letters, viewOf } from './bytes.ts';

/** What stands before the fields in the segment of a JPEG. */
const mark = 'Exif\0\0';
const orientation = 0x0112;

/**
 * How a camera held the picture: 1 as it stands, 2 to 8 turned or mirrored (EXIF 2.32, tag
 * "Orientation"). 1 too where nothing can be read.
 * @param content of an APP1 segment, behind its length
 */
export function turnOf(content: Uint8Array): number {
  if (letters(content, 0, mark.length) !== mark) return 1;
  const tiff = viewOf(content.subarray(mark.length));
  const has = (at: number, length: number): boolean => at + length <= tiff.byteLength;
  if (!has(0, 8)) return 1;
  const little = tiff.getUint16(0) === 0x4949;
  const fields = tiff.getUint32(4, little);
  if (!has(fields, 2)) return 1;
  const count = tiff.getUint16(fields, little);
  for (let at = fields + 2; at < fields + 2 + 12 * count && has(at, 12); at += 12) {
    if (tiff.getUint16(at, little) !== orientation) continue;
    const turn = tiff.getUint16(at + 8, little);
    return turn >= 1 && turn <= 8 ? turn : 1;
  }
  return 1;
}

/** A segment that says how the picture is turned, and nothing else. */
export function turnSegment(turn: number): Uint8Array {
  const segment = new Uint8Array(36);
  const view = viewOf(segment);
  view.setUint16(0, 0xffe1);
  view.setUint16(2, segment.length - 2);
  segment.set(
    Array.from(mark, (letter) => letter.charCodeAt(0)),
    4,
  );
  // Big-endian; one field at byte 8; its tag, its type (a short), how many, and which.
  view.setUint32(10, 0x4d4d002a);
  view.setUint32(14, 8);
  view.setUint16(18, 1);
  view.setUint16(20, orientation);
  view.setUint16(22, 3);
  view.setUint32(24, 1);
  view.setUint16(28, turn);
  return segment;
}
