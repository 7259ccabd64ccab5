import { bad, good, type Parsed, type Problem } from '../problem.ts';
import { letters, type Piece } from './bytes.ts';
import { bareGif, gifPieces } from './gif.ts';
import { bareJpeg, jpegPieces } from './jpeg.ts';
import { barePng, pngPieces } from './png.ts';
import { bareWebp, webpPieces } from './webp.ts';

/** The kinds of pictures that every browser shows; each is the ending of its file too. */
const pictureKinds = ['jpg', 'png', 'webp', 'gif'] as const;
export type PictureKind = (typeof pictureKinds)[number];

/** A picture may be no larger than this, in bytes. */
export const maxPicture = 20_000_000;

type Format = {
  /** How its first bytes begin, as letters. */
  readonly begins: RegExp;
  readonly pieces: (bytes: Uint8Array) => readonly Piece[] | undefined;
  readonly bare: (bytes: Uint8Array, pieces: readonly Piece[]) => Uint8Array;
};

const formats: Readonly<Record<PictureKind, Format>> = {
  jpg: { begins: /^\xff\xd8\xff/, pieces: jpegPieces, bare: bareJpeg },
  png: { begins: /^\x89PNG\r\n/, pieces: pngPieces, bare: barePng },
  webp: { begins: /^RIFF[^]{4}WEBP/, pieces: webpPieces, bare: bareWebp },
  gif: { begins: /^GIF8[79]a/, pieces: gifPieces, bare: bareGif },
};

/** How files begin that telephones write and most browsers do not show (ISO/IEC 23008-12, annex B). */
const telephone = /^[^]{4}ftyp(hei[cxms]|hev[cxms]|mif1|msf1)/;

/** What a picture is by its own bytes, whatever its name says; or in one line why it is none. */
export function readPicture(bytes: Uint8Array): Parsed<PictureKind> {
  if (bytes.length === 0) return bad(problems.empty);
  if (bytes.length > maxPicture) return bad(problems.big);
  const start = letters(bytes, 0, 12);
  const kind = pictureKinds.find((one) => formats[one].begins.test(start));
  if (kind === undefined) return bad(telephone.test(start) ? problems.heic : problems.other);
  return formats[kind].pieces(bytes) === undefined ? bad(problems.cut) : good(kind);
}

/**
 * The picture as a stranger may have it: where, when, by whom and by what it was taken is gone, and
 * what may stand behind its end; it looks as before. The same bytes each time.
 * @param bytes what `readPicture` has found good; anything else is given back as it is
 */
export function barePicture(bytes: Uint8Array): Uint8Array {
  const read = readPicture(bytes);
  const format = read.kind === 'good' ? formats[read.value] : undefined;
  const pieces = format?.pieces(bytes);
  return format === undefined || pieces === undefined ? bytes : format.bare(bytes, pieces);
}

const problems = {
  empty: {
    code: 'photo-empty',
    message: 'This file is empty.',
    mend: 'Take the photo again, or copy it from the camera once more.',
  },
  big: tooBig(),
  heic: {
    code: 'photo-heic',
    message: 'This is a HEIC picture, which most browsers do not show.',
    mend: 'Save or send it as JPEG; on the telephone set the camera to "most compatible".',
  },
  other: {
    code: 'photo-kind',
    message: 'This is no picture: its bytes are not those of a JPEG, PNG, WebP or GIF.',
    mend: 'Name a photo, or save it as JPEG.',
  },
  cut: {
    code: 'photo-cut-short',
    message: 'This picture ends before it is whole.',
    mend: 'Copy it from the camera once more.',
  },
} as const satisfies Readonly<Record<string, Problem>>;

/** Told of a file by its size too, before it is read. */
export function tooBig(): Problem {
  return {
    code: 'photo-too-big',
    message: 'This file is larger than 20 MB.',
    mend: 'Save it smaller: 2000 dots across are plenty.',
  };
}
