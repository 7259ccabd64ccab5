/** A stretch of a picture's file that is kept or left out as a whole. `end` is the first byte behind it. */
export type Piece = { readonly name: string; readonly start: number; readonly end: number };

/** Bytes as the letters of their numbers: names and marks in files of pictures are such. */
export const letters = (bytes: Uint8Array, start: number, end: number): string =>
  String.fromCharCode(...bytes.subarray(start, end));

/** The numbers in a file, wherever its bytes begin. */
export const viewOf = ({ buffer, byteOffset, byteLength }: Uint8Array): DataView =>
  new DataView(buffer, byteOffset, byteLength);

/** Pieces put together again, in their order. */
export const joinedPieces = (bytes: Uint8Array, pieces: readonly Piece[]): Uint8Array =>
  joinedBytes(pieces.map(({ start, end }) => bytes.subarray(start, end)));

export function joinedBytes(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
