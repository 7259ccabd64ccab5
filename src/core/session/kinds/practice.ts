import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { programText } from '../free-text.ts';

/** How a practice session came to its end: proven, given up, or its secret was gone. */
const practiceEnds = ['proven', 'given-up', 'lost'] as const;

/** What only practice on a hidden fault has. */
export const practiceKinds = {
  /** The advice was asked for, and its minutes were paid. */
  hinted: z.object({
    kind: z.literal('hinted'),
    minutes: z.number().min(0).max(600),
    /** What the advice named first. */
    next: z.object({ do: z.enum(['check', 'repair']), id: Id }).optional(),
    says: programText(2000),
  }),
  /** The hidden fault, told at the end; without causes where what it was is lost. */
  revealed: z.object({
    kind: z.literal('revealed'),
    as: z.enum(practiceEnds),
    causes: z.array(Id).max(10).optional(),
    salt: programText(64)
      .regex(/^[0-9a-f]{64}$/)
      .optional(),
  }),
};
