import type { Fingerprint } from '../record/chain.ts';

/** What a practice session hides until its end. */
export type Secret = {
  /** The causes that are there, by id. */
  readonly causes: readonly string[];
  /** 64 digits and letters a to f: all that the vehicle shows is drawn from it. */
  readonly salt: string;
};

/** What is hashed: the causes in the order of the alphabet, then the salt, with blanks between. */
const commitmentText = ({ causes, salt }: Secret): string => [...causes.toSorted(), salt].join(' ');

/** The commitment to a secret; `printf %s "cause salt" | sha256sum` gives the same. */
export const commitmentOf = (secret: Secret, fingerprint: Fingerprint): string =>
  fingerprint(commitmentText(secret));

/** A salt as it is written. */
export const isSalt = (text: string): boolean => /^[0-9a-f]{64}$/.test(text);

/**
 * One of four numbers that a salt holds, for a generator; half of the salt stays out of all of them, so
 * that what the vehicle shows never gives the salt away.
 */
export const seedIn = (salt: string, place: 0 | 1 | 2 | 3): number =>
  Number.parseInt(salt.slice(8 * place, 8 * place + 8), 16);
