import type { PictureKind } from '../../picture/picture.ts';
import { slug } from '../name.ts';

/** A photo that lies beside its session, whole and synced. */
export type KeptPhoto = {
  /** From the folder of the session: `2026-04-11-1042-van-no-supply.photos/01-bulkhead.jpg`. */
  readonly file: string;
  /** SHA-256 of its bytes, in hexadecimal digits. */
  readonly sha256: string;
  readonly bytes: number;
};

/** The folder of a session's photos, beside it. */
export const photoFolder = (session: string): string => `${session}.photos`;

/** `03-bulkhead-connector.jpg`; the number is one more than the highest among the names there are. */
export function photoName(caption: string, kind: PictureKind, there: readonly string[]): string {
  const highest = Math.max(0, ...there.map((name) => Number(/^\d{2,6}(?=-)/.exec(name)?.[0] ?? 0)));
  const words = caption.trim() === '' ? 'photo' : slug(caption);
  return `${String(highest + 1).padStart(2, '0')}-${words}.${kind}`;
}

/**
 * Whether the file of a photo, as a record names it, lies beside the record or in a folder there.
 * A record is data: no name in it leads anywhere else.
 */
export const liesBeside = (file: string): boolean =>
  file.split('/').every((part) => /^[\w][\w. -]*$/.test(part)) && !file.includes('..');
