import { createHash } from 'node:crypto';
import { crc32, deflateSync } from 'node:zlib';

/**
 * Pictures that stand in for photographs: drawn here, so that none is anybody else's. The same words
 * give the same bytes with every version of the library: nothing is packed.
 */
export const drawnPicture = (words: string): Uint8Array => {
  const seed = createHash('sha256').update(words).digest();
  return pngOf({ width: 120, height: 90, palette: paletteOf(seed), dotAt: dotsOf(seed) });
};

const paletteOf = (seed: Buffer): readonly Color[] =>
  [0, 3, 6, 9].map((at) => [byte(seed, at), byte(seed, at + 1), byte(seed, at + 2)]);

/** A disc over two bars on a plain ground, where the words put them. */
function dotsOf(seed: Buffer): (x: number, y: number) => number {
  const [left, top, middle, height] = [12, 13, 14, 15].map((at) => byte(seed, at));
  return (x, y) => {
    const far = (x - 30 - ((middle ?? 0) % 60)) ** 2 + (y - 25 - ((height ?? 0) % 40)) ** 2;
    if (far < 200) return 1;
    if (Math.abs(x - ((left ?? 0) % 110)) < 6) return 2;
    return Math.abs(y - ((top ?? 0) % 80)) < 6 ? 3 : 0;
  };
}

const byte = (seed: Buffer, at: number): number => seed.readUInt8(at);

type Color = readonly [red: number, green: number, blue: number];
type Drawing = {
  readonly width: number;
  readonly height: number;
  readonly palette: readonly Color[];
  /** Index of the color of a dot. */
  readonly dotAt: (x: number, y: number) => number;
  /** Chunks before the dots: text, or what a camera writes. */
  readonly more?: readonly Uint8Array[];
};

/** A PNG of up to 256 colors (W3C PNG, third edition: signature, IHDR, PLTE, IDAT, IEND). */
function pngOf({ width, height, palette, dotAt, more = [] }: Drawing): Uint8Array {
  const rows = Array.from({ length: height }, (_, y) => [
    0,
    ...Array.from({ length: width }, (__, x) => dotAt(x, y)),
  ]);
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    pngChunk('IHDR', head),
    pngChunk('PLTE', Buffer.from(palette.flat())),
    ...more,
    pngChunk('IDAT', deflateSync(Buffer.from(rows.flat()), { level: 0 })),
    pngChunk('IEND', Buffer.alloc(0)),
  ]);
}

/** A chunk of a PNG: its length, its name, what it holds, and the sum over both. */
export function pngChunk(name: string, bytes: Uint8Array): Uint8Array {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), bytes]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(bytes.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** A segment of a JPEG: its marker, its length, what it holds (ITU-T T.81, annex B). */
export function jpegSegment(marker: number, bytes: Uint8Array): Uint8Array {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(bytes.length + 2, 2);
  return Buffer.concat([head, bytes]);
}

/**
 * A JPEG of one gray square, eight dots wide: one table of ones, a code of one bit for "no
 * difference" and one for "end of block", and so two bits of picture (ITU-T T.81).
 * @param more segments behind the first marker, such as what a camera writes
 */
export function drawnJpeg(more: readonly Uint8Array[] = []): Uint8Array {
  const oneCode = [1, ...Array.from({ length: 15 }, () => 0), 0];
  return Buffer.concat([
    Buffer.from([0xff, 0xd8]),
    ...more,
    jpegSegment(0xdb, Buffer.from([0, ...Array.from({ length: 64 }, () => 1)])),
    jpegSegment(0xc0, Buffer.from([8, 0, 8, 0, 8, 1, 1, 0x11, 0])),
    jpegSegment(0xc4, Buffer.from([0x00, ...oneCode])),
    jpegSegment(0xc4, Buffer.from([0x10, ...oneCode])),
    jpegSegment(0xda, Buffer.from([1, 1, 0, 0, 63, 0])),
    Buffer.from([0x3f]),
    Buffer.from([0xff, 0xd9]),
  ]);
}

/** An EXIF block as a camera writes one (EXIF 2.32): how the picture is turned, and where it was taken. */
export function exifWithPlace(turned = 1): Uint8Array {
  const tiff = Buffer.alloc(86);
  tiff.write('II*\0', 0, 'latin1');
  tiff.writeUInt32LE(8, 4);
  tiff.writeUInt16LE(2, 8);
  writeField(tiff, 10, { tag: 0x0112, type: 3, count: 1, value: turned });
  // Points at the fields of the place.
  writeField(tiff, 22, { tag: 0x8825, type: 4, count: 1, value: 38 });
  tiff.writeUInt16LE(1, 38);
  writeField(tiff, 40, { tag: 0x0002, type: 5, count: 3, value: 56 });
  for (const [index, part] of [48, 1, 51, 1].entries()) tiff.writeUInt32LE(part, 56 + 4 * index);
  tiff.write('PLACE 48 51', 72, 'latin1');
  return tiff;
}

type FieldOf = {
  readonly tag: number;
  readonly type: number;
  readonly count: number;
  readonly value: number;
};

function writeField(tiff: Buffer, at: number, { tag, type, count, value }: FieldOf): void {
  tiff.writeUInt16LE(tag, at);
  tiff.writeUInt16LE(type, at + 2);
  tiff.writeUInt32LE(count, at + 4);
  tiff.writeUInt32LE(value, at + 8);
}

/** The segment in which a JPEG carries EXIF. */
export const exifSegment = (exif: Uint8Array): Uint8Array =>
  jpegSegment(0xe1, Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), exif]));

/** A chunk of a WebP: its name, its length, what it holds, and a byte more where that is odd. */
const riffChunk = (name: string, bytes: Uint8Array): Uint8Array => {
  const length = Buffer.alloc(4);
  length.writeUInt32LE(bytes.length);
  return Buffer.concat([
    Buffer.from(name, 'latin1'),
    length,
    bytes,
    Buffer.alloc(bytes.length % 2),
  ]);
};

/**
 * A WebP of one dot in its long form (RFC 9649): a head that says what it holds, the dot, then
 * chunks of these names with what a camera writes.
 */
export function drawnWebp(names: readonly ('EXIF' | 'XMP ')[], exif: Uint8Array): Uint8Array {
  const marks = (names.includes('EXIF') ? 0x08 : 0) | (names.includes('XMP ') ? 0x04 : 0);
  // One dot, lossless: the smallest there is, from memory.
  const dot = Buffer.from('2f00000000078810fd0ffe0722a2ff01', 'hex');
  const inside = Buffer.concat([
    Buffer.from('WEBP', 'latin1'),
    riffChunk('VP8X', Buffer.from([marks, 0, 0, 0, 0, 0, 0, 0, 0, 0])),
    riffChunk('VP8L', dot),
    ...names.map((name) => riffChunk(name, exif)),
  ]);
  return riffChunk('RIFF', inside);
}

/** A GIF of one dot (GIF89a), with these remarks before it. */
export const drawnGif = (remarks: readonly string[]): Uint8Array =>
  Buffer.concat([
    Buffer.from('GIF89a\x01\0\x01\0\x80\0\0\0\0\0\xff\xff\xff', 'latin1'),
    ...remarks.map((words) =>
      Buffer.from(`!\xfe${String.fromCharCode(words.length)}${words}\0`, 'latin1'),
    ),
    Buffer.from(',\0\0\0\0\x01\0\x01\0\0\x02\x02D\x01\0;', 'latin1'),
  ]);
