import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import * as z from 'zod';
import { commitmentOf, isSalt, type Secret } from '../core/session/practice/secret.ts';
import type { Header } from '../core/session/header/header.ts';
import { attempt, type Files } from './files.ts';
import { sha256 } from './recover.ts';
import { writeWhole } from './whole-file.ts';

/** Where what practice hides is kept until its end: beside the settings, never beside the records. */
const pathOf = (settings: string, commitment: string): string =>
  join(settings, 'practice', `${commitment}.json`);

const Kept = z.object({
  causes: z.array(z.string().max(200)).min(1).max(10),
  salt: z.string().refine(isSalt),
});

/** A salt that nobody can guess. */
export const newSalt = (): string => randomBytes(32).toString('hex');

/** A seed of a set: as hard to guess. */
export const newSeed = (): string => randomBytes(16).toString('hex');

/** Keeps a secret on this machine and returns the commitment to it. */
export function keepSecret(files: Files, settings: string, secret: Secret): string {
  const commitment = commitmentOf(secret, sha256);
  files.makeFolder(join(settings, 'practice'));
  writeWhole(files, pathOf(settings, commitment), `${JSON.stringify(secret)}\n`);
  return commitment;
}

/** What a practice session hides; nothing in a job, and where the secret is gone or is another one. */
export function secretOf(
  files: Files,
  settings: string,
  { practice }: Pick<Header, 'practice'>,
): Secret | undefined {
  if (practice === undefined) return undefined;
  const { commitment } = practice;
  const path = pathOf(settings, commitment);
  const bytes = attempt(path, () => files.read(path));
  if (bytes.kind === 'bad') return undefined;
  const kept = attempt(path, () => Kept.safeParse(parsed(new TextDecoder().decode(bytes.value))));
  if (kept.kind === 'bad' || !kept.value.success) return undefined;
  const secret = kept.value.data;
  return commitmentOf(secret, sha256) === commitment ? secret : undefined;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
