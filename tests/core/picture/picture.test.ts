import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  barePicture,
  maxPicture,
  readPicture,
  type PictureKind,
} from '../../../src/core/picture/picture.ts';
import {
  drawnGif,
  drawnJpeg,
  drawnPicture,
  drawnWebp,
  exifSegment,
  exifWithPlace,
  jpegSegment,
  pngChunk,
} from '../../helpers/drawn-picture.ts';

const ascii = (text: string): Uint8Array => Buffer.from(text, 'latin1');
const code = (bytes: Uint8Array): string => {
  const read = readPicture(bytes);
  return read.kind === 'good' ? read.value : (read.problems[0]?.code ?? '');
};

const place = exifWithPlace();
const png = drawnPicture('the fuse');
/** A PNG with chunks put in behind its size, where they may stand. */
const pngWith = (...chunks: readonly Uint8Array[]): Uint8Array =>
  Buffer.concat([png.subarray(0, 33), ...chunks, png.subarray(33)]);

/** A picture of every kind with the place in it, wherever such a picture can carry it. */
const placed: readonly (readonly [kind: PictureKind, bytes: Uint8Array, bare: Uint8Array])[] = [
  [
    'jpg',
    Buffer.concat([
      drawnJpeg([
        exifSegment(place),
        jpegSegment(0xe1, ascii('http://ns.adobe.com/xap/1.0/\0PLACE')),
        jpegSegment(0xed, ascii('Photoshop 3.0\0PLACE')),
        jpegSegment(0xfe, ascii('PLACE')),
      ]),
      ascii('a moving picture behind it: PLACE'),
    ]),
    drawnJpeg(),
  ],
  [
    'png',
    Buffer.concat([
      pngWith(pngChunk('eXIf', place), pngChunk('iTXt', ascii('Where\0PLACE'))),
      ascii('PLACE'),
    ]),
    png,
  ],
  ['webp', drawnWebp(['EXIF', 'XMP '], place), drawnWebp([], place)],
  ['gif', drawnGif(['PLACE']), drawnGif([])],
];

test.each(placed)(
  'a %s is known by its bytes, and bare of the place it was taken',
  (kind, bytes, bare) => {
    expect(code(bytes)).toBe(kind);
    expect(Buffer.from(bytes).includes('PLACE')).toBe(true);

    const left = barePicture(bytes);

    expect(Buffer.from(left).includes('PLACE')).toBe(false);
    expect(Buffer.compare(left, bare)).toBe(0);
    expect(Buffer.compare(barePicture(left), left)).toBe(0);
  },
);

test('a bare JPEG is turned as it was, and keeps its colors', () => {
  const profile = jpegSegment(0xe2, ascii('ICC_PROFILE\0colors'));
  const jfif = jpegSegment(0xe0, ascii('JFIF\0 and more'));

  const left = Buffer.from(barePicture(drawnJpeg([jfif, exifSegment(exifWithPlace(6)), profile])));

  expect(left.includes('GPS')).toBe(false);
  expect(left.includes('ICC_PROFILE')).toBe(true);
  // Behind the JFIF segment one that says "turned: 6" (EXIF 2.32, 4.6.4: tag 274, short, one).
  expect(left.subarray(2, 6 + 13).includes('JFIF')).toBe(true);
  expect(left.toString('hex')).toContain('4d4d002a00000008000101120003000000010006');
});

test.each([
  ['nothing', ascii(''), 'photo-empty'],
  ['words', ascii('these are words, not a picture'), 'photo-kind'],
  [
    'a drawing that can hold a script',
    ascii('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    'photo-kind',
  ],
  ['what most telephones write', ascii('\0\0\0\x18ftypheic\0\0\0\0'), 'photo-heic'],
  ['the same by its other mark', ascii('\0\0\0\x18ftypmif1\0\0\0\0'), 'photo-heic'],
  ['a JPEG without dots', Buffer.from('ffd8ffd9', 'hex'), 'photo-cut-short'],
  ['a PNG of no size', pngWith().fill(0, 16, 20), 'photo-cut-short'],
  ['a picture over the limit', Buffer.alloc(maxPicture + 1, png), 'photo-too-big'],
])('%s is refused', (_, bytes, problem) => {
  expect(code(bytes)).toBe(problem);
});

test.each(placed)(
  'a %s that ends before it is whole is refused, wherever it was cut',
  (_, __, bare) => {
    const cut = Array.from(
      { length: Math.min(bare.length, 3000) },
      (___, index) => bare.length - 1 - index,
    );

    expect(
      cut.filter((length) => length >= 0 && readPicture(bare.subarray(0, length)).kind === 'good'),
    ).toEqual([]);
  },
);

test('whatever bytes come, they are told apart without a fault, and what is bare stays a picture', () => {
  const beginnings = placed.map(([, bytes]) => bytes);
  fc.assert(
    fc.property(
      fc.constantFrom(...beginnings),
      fc.array(fc.tuple(fc.nat(4000), fc.integer({ min: 0, max: 255 })), { maxLength: 6 }),
      (bytes, spoiled) => {
        const harmed = Uint8Array.from(bytes);
        for (const [at, value] of spoiled) if (at < harmed.length) harmed[at] = value;
        const before = code(harmed);
        const left = barePicture(harmed);
        expect(code(left)).toBe(before);
      },
    ),
    { seed: 20_260_411, numRuns: 1000 },
  );
});

test('random bytes are no picture', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 2000 }), (bytes) => {
      expect(readPicture(bytes).kind).toBe('bad');
    }),
    { seed: 20_260_411, numRuns: 2000 },
  );
});
