import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Standing } from '../../tree/shapes.ts';
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
  z.strictObject({ do: z.literal('part-off'), part: Text, where: Text.optional() }),
  z.strictObject({ do: z.literal('part-on'), part: Text }),
  z.strictObject({ do: z.literal('aid-on'), aid: Text }),
  z.strictObject({ do: z.literal('aid-off'), aid: Text }),
] as const;
