import { bad, good, type Parsed } from '../core/problem.ts';

/**
 * The bytes of a text file as text: UTF-8, or UTF-16 of either order, told by a mark at the
 * beginning or by the zero beside its first sign. A byte that is none of these is told with its place.
 */
export function textOf(bytes: Uint8Array, file: string): Parsed<string> {
  const coding = codingOf(bytes);
  // A mark at the beginning is left out by the decoder.
  if (coding !== 'utf-8') return good(new TextDecoder(coding).decode(bytes));
  try {
    return good(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return bad({
      code: 'not-utf-8',
      file,
      ...firstStrange(bytes),
      message: 'A byte here is not UTF-8, the coding of text that this program reads.',
      mend: 'Save the file as UTF-8: an editor asks for it in "Save as".',
    });
  }
}

/** The same from the beginning of a file, which may be cut within a sign: what is strange is passed over. */
export const textAtStart = (bytes: Uint8Array): string =>
  new TextDecoder(codingOf(bytes)).decode(bytes);

function codingOf([first, second]: Uint8Array): 'utf-8' | 'utf-16le' | 'utf-16be' {
  if ((first === 0xff && second === 0xfe) || (first !== 0 && second === 0)) return 'utf-16le';
  if ((first === 0xfe && second === 0xff) || (first === 0 && second !== 0)) return 'utf-16be';
  return 'utf-8';
}

const newline = 0x0a;

/** Line and column of the first byte that is no UTF-8; no sign of several bytes holds a newline. */
function firstStrange(bytes: Uint8Array): { readonly line: number; readonly column: number } {
  let start = 0;
  for (let line = 1; start <= bytes.length; line += 1) {
    const found = bytes.indexOf(newline, start);
    const end = found < 0 ? bytes.length : found;
    const column = strangeIn(bytes.subarray(start, end));
    if (column !== undefined) return { line, column };
    start = end + 1;
  }
  throw new Error('a file is not UTF-8, and every line of it is');
}

/** The column of the first strange byte of a line, or nothing. */
function strangeIn(bytes: Uint8Array): number | undefined {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  try {
    decoder.decode(bytes);
    return undefined;
  } catch {
    const loose = new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes);
    return loose.indexOf('\ufffd') + 1;
  }
}
