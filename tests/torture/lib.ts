import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What an attack came to: how often it was tried, and every failure in words. */
export type Tried = {
  readonly attack: string;
  readonly tries: number;
  readonly failures: readonly string[];
  /** What took too long on this machine; only `npm run torture` judges it, for no test goes by a clock. */
  readonly slow?: readonly string[];
  /** What was counted beside, in words. */
  readonly seen: string;
};

/** How long an attack goes on, and where its chance begins. */
export type Size = { readonly seed: number; readonly count: number };

export type Attack = (size: Size) => Tried | Promise<Tried>;

/** Numbers from 0 to below 1, the same for a seed: mulberry32, a public-domain generator (from memory). */
export function chance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

export function pick<T>(random: () => number, from: readonly T[]): T {
  const one = from[Math.floor(random() * from.length)];
  if (one === undefined) throw new Error('nothing to pick from');
  return one;
}

export const folderFor = (name: string): string =>
  mkdtempSync(join(tmpdir(), `droplight-torture-${name}-`));

/** Signs that drive or deceive a terminal. */
// oxlint-disable-next-line no-control-regex -- control characters are what is looked for
export const driving = /[\x00-\x08\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

const pieces = [
  '\u001b[31m',
  '\u001b]52;c;eA==\u0007',
  '\u009b2J',
  '\u202e',
  '\u2066',
  '\u007f',
  '\u0000',
  '\ud800',
  '\r\n',
  '\u2028',
  'e\u0301\u0301\u0301\u0301\u0301\u0301',
  '"',
  '\\',
  '{',
  '}',
  '[',
  ',',
  ':',
  '12.6',
  'V',
  '-',
  '1e309',
  '0x1',
  '½',
  '__proto__',
  'do',
  'find',
  'null',
  ' ',
  'OL',
  'ohm',
  '0'.repeat(300),
] as const;

/** Text of hostile pieces and of any signs at all. */
export function hostileText(random: () => number): string {
  const length = Math.floor(random() * 8);
  return Array.from({ length }, () =>
    random() < 0.7 ? pick(random, pieces) : String.fromCharCode(Math.floor(random() * 65_536)),
  ).join('');
}
