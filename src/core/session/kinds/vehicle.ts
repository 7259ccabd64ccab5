import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Standing } from '../../tree/shapes.ts';
import { Text, Count, Bag, despite, Conditions } from './shapes.ts';

/** How the vehicle stands: what is open, off, on for a while, and the air of today. */
export const vehicleKinds = {
  conditions: z.object({
    kind: z.literal('conditions'),
    set: Conditions,
    /** Asked for, and nobody knows: readings are judged as they are read. */
    notKnown: z.array(z.enum(['altitude', 'temperature'])).optional(),
  }),
  standing: z.object({
    kind: z.literal('standing'),
    set: Standing,
    /** Not said, but a check was done that needs it so. */
    implied: z.boolean().optional(),
    ...despite,
  }),
  access: z.object({
    kind: z.literal('access'),
    access: Id,
    now: z.enum(['open', 'closed']),
    implied: z.boolean().optional(),
  }),
  'part-off': z.object({
    kind: z.literal('part-off'),
    part: Text,
    /** Where it lies now. */
    where: Text.optional(),
    /** What held it: count, kind, sizes, which went where. */
    fasteners: Text.optional(),
    /** How its hoses and wires ran. */
    routing: Text.optional(),
    /** The bag it is in, or its fasteners; left out where there is none. */
    bag: Bag.optional(),
  }),
  /** `of` is the event that took it off; records of older versions name the part alone. */
  'part-on': z.object({ kind: z.literal('part-on'), part: Text, of: Count.optional() }),
  /** The proof goes on although these are not back; `things` are the events that took them off. */
  'left-apart': z.object({
    kind: z.literal('left-apart'),
    things: z.array(Count).min(1),
    why: Text,
  }),
  /** Something put on for a while that must come off again: a bridge, a jumper, a clamp, a plug. */
  'aid-on': z.object({ kind: z.literal('aid-on'), aid: Text }),
  'aid-off': z.object({ kind: z.literal('aid-off'), aid: Text, of: Count.optional() }),
};
