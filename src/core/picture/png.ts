import { joinedPieces, letters, viewOf, type Piece } from './bytes.ts';

const signature = '\x89PNG\r\n\x1a\n';

/**
 * The chunks of a PNG, its signature the first of them; what stands behind the last is none of the
 * picture. Undefined where it ends before, or is none. Source: W3C PNG, third edition, section 5.
 */
export function pngPieces(bytes: Uint8Array): readonly Piece[] | undefined {
  if (letters(bytes, 0, 8) !== signature) return undefined;
  const pieces: Piece[] = [{ name: '', start: 0, end: 8 }];
  const view = viewOf(bytes);
  for (let start = 8; start + 12 <= bytes.length;) {
    const end = start + 12 + view.getUint32(start);
    if (end > bytes.length) return undefined;
    const name = letters(bytes, start + 4, start + 8);
    pieces.push({ name, start, end });
    if (name === 'IEND') return isShown(view, pieces) ? pieces : undefined;
    start = end;
  }
  return undefined;
}

/** Its size comes first and is none of nothing, and there are dots. */
function isShown(view: DataView, [, head, ...rest]: readonly Piece[]): boolean {
  if (head?.name !== 'IHDR' || head.end - head.start !== 25) return false;
  const hasSize = view.getUint32(head.start + 8) > 0 && view.getUint32(head.start + 12) > 0;
  return hasSize && rest.some(({ name }) => name === 'IDAT');
}

/** The signature and the chunks that say how the picture looks. All others may tell where, when and by whom it was taken. */
const looks: ReadonlySet<string> = new Set(
  ' IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP bKGD pHYs acTL fcTL fdAT'.split(' '),
);

/** A PNG with nothing in it but the picture. */
export const barePng = (bytes: Uint8Array, pieces: readonly Piece[]): Uint8Array =>
  joinedPieces(
    bytes,
    pieces.filter(({ name }) => looks.has(name)),
  );
