import * as z from 'zod';
import { freeText, programText } from '../free-text.ts';

/**
 * What the first line of a practice session says: it is committed to its hidden fault, and holds nothing
 * that the fault follows from.
 */
export const Practice = z.object({
  /** SHA-256 of the hidden causes and their salt: see `core/session/practice/secret.ts`. */
  commitment: programText(64).regex(/^[0-9a-f]{64}$/),
  /** Two faults are hidden. */
  hard: z.literal(true).optional(),
  /** The set of a class that it is from, and its number there. */
  set: z.object({ name: freeText(200), number: z.number().int().min(1).max(9999) }).optional(),
});

export type Practice = z.output<typeof Practice>;
