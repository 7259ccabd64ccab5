import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Standing } from '../../tree/shapes.ts';
import { Bag, Count } from '../kinds/shapes.ts';
import { Text, despite } from './shapes.ts';

/** How the vehicle stands: what is open, off, on for a while, and the air of today. */
export const vehicleActions = [
  z.strictObject({
    do: z.literal('conditions'),
    altitude: Text.optional(),
    temperature: Text.optional(),
    notKnown: z.array(z.enum(['altitude', 'temperature'])).optional(),
  }),
  z.strictObject({ do: z.literal('standing'), ...Standing.shape, ...despite }),
  z.strictObject({ do: z.literal('access'), open: Id.optional(), close: Id.optional() }),
  z.strictObject({
    do: z.literal('part-off'),
    part: Text,
    where: Text.optional(),
    fasteners: Text.optional(),
    routing: Text.optional(),
    /** Left out: the next one that was never used. */
    bag: z.union([Bag, z.literal('none')]).optional(),
  }),
  // By the number of the event that took it off, or by its name where only one of that name is off.
  z.strictObject({ do: z.literal('part-on'), n: Count.optional(), part: Text.optional() }),
  /** The proof goes on with what is not back, and why. */
  z.strictObject({ do: z.literal('leave-apart'), why: Text }),
  z.strictObject({ do: z.literal('aid-on'), aid: Text }),
  z.strictObject({ do: z.literal('aid-off'), n: Count.optional(), aid: Text.optional() }),
] as const;
