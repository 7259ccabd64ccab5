import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { despite } from './shapes.ts';

/** What is done in practice on a hidden fault, and nowhere else. */
export const practiceActions = [
  /** Makes a check: the hidden vehicle answers. */
  z.strictObject({
    do: z.literal('make'),
    check: Id,
    /** The cautions of this step were read. */
    acknowledged: z.boolean().optional(),
    ...despite,
  }),
  /** Shows what the advice knows until the next answer; it costs minutes. */
  z.strictObject({ do: z.literal('hint') }),
] as const;
