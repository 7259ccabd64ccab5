import { joinedPieces, letters, viewOf, type Piece } from './bytes.ts';

/**
 * The chunks of a WebP, its head the first of them; what stands behind them is none of the picture.
 * Undefined where it ends before, or is none. Source: RFC 9649, section 2.
 */
export function webpPieces(bytes: Uint8Array): readonly Piece[] | undefined {
  if (letters(bytes, 0, 4) !== 'RIFF' || letters(bytes, 8, 12) !== 'WEBP') return undefined;
  const view = viewOf(bytes);
  if (bytes.length < 12) return undefined;
  const whole = 8 + view.getUint32(4, true);
  if (whole > bytes.length) return undefined;
  const pieces: Piece[] = [{ name: '', start: 0, end: 12 }];
  for (let start = 12; start + 8 <= whole;) {
    const length = view.getUint32(start + 4, true);
    // A chunk of an odd length has one byte more behind it.
    const end = start + 8 + length + (length % 2);
    if (end > whole) return undefined;
    pieces.push({ name: letters(bytes, start, start + 4), start, end });
    start = end;
  }
  return pieces.some(({ name }) => dots.has(name)) ? pieces : undefined;
}

const dots: ReadonlySet<string> = new Set(['VP8 ', 'VP8L', 'ANMF']);

/** Chunks that say how the picture looks. */
const looks: ReadonlySet<string> = new Set(['', 'VP8X', 'ALPH', 'ANIM', 'ICCP', ...dots]);

/** The two marks in the head that say where and by what it was taken are told further on. */
const tells = 0x08 | 0x04;

/** A WebP with nothing in it but the picture. */
export function bareWebp(bytes: Uint8Array, pieces: readonly Piece[]): Uint8Array {
  const bare = joinedPieces(
    bytes,
    pieces.filter(({ name }) => looks.has(name)),
  );
  const view = viewOf(bare);
  view.setUint32(4, bare.length - 8, true);
  if (letters(bare, 12, 16) === 'VP8X') view.setUint8(20, view.getUint8(20) & ~tells);
  return bare;
}
