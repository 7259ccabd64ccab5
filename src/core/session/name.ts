import type { Closing } from './record/closing.ts';

/** Names that some systems keep for devices. */
const devices = /^(con|prn|aux|nul|com\d|lpt\d)$/;

/** Plain words for a file name: lower case, digits and hyphens, at most 40 characters. */
export function slug(text: string): string {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
  return plain === '' || devices.test(plain) ? `job${plain === '' ? '' : `-${plain}`}` : plain;
}

/** `2026-04-11-1042-orchard-van-no-supply`; `at` is ISO wall time. */
export function sessionId(at: string, vehicle: string, tree: string): string {
  const day = at.slice(0, 10);
  const time = at.slice(11, 16).replace(':', '');
  return `${day}-${time}-${slug(vehicle)}-${slug(tree)}`;
}

/** How a session stands: open, closed as something, or not known, as it cannot or need not be read yet. */
export type SessionState = 'open' | Closing | 'unknown';

/** One line of a list of sessions. */
export type SessionLine = {
  readonly path: string;
  /** The name of its file, without its ending. */
  readonly name: string;
  readonly state: SessionState;
  /** What its first line says; undefined where that cannot be read. */
  readonly of: { readonly vehicle: string; readonly tree: string } | undefined;
  /** It is practice on a hidden fault. */
  readonly practice?: true;
};
