import { encode } from 'uqr';

/** The dots of a QR code (ISO/IEC 18004), a row a list, without the quiet zone; true is dark. */
export const codeOf = (text: string): readonly (readonly boolean[])[] =>
  encode(text, { ecc: 'L', border: 0 }).data;
