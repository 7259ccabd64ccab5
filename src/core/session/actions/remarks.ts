import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { partUses } from '../costs/parts.ts';
import { Subject, urgencies, Worked } from '../kinds/shapes.ts';
import { Text, told } from './shapes.ts';

/** What was said and kept beside the steps. */
export const remarkActions = [
  z.strictObject({
    do: z.literal('note'),
    text: Text,
    about: Id.optional(),
    figure: Worked.optional(),
    on: z.literal('road').optional(),
    ...told,
  }),
  z.strictObject({
    do: z.literal('photo'),
    /** The path of the photo as it was typed, pasted or dropped; it is copied beside the session. */
    file: Text,
    caption: Text.optional(),
    about: Subject.optional(),
  }),
  z.strictObject({ do: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  /** Stops a timer, or puts it away; left out, the one that was set last. */
  z.strictObject({ do: z.literal('timer-off'), n: z.number().int().min(1).optional() }),
  /** A part as typed in one line, `2 x fuse link at 3.50`, or its count and price by themselves. */
  z.strictObject({
    do: z.literal('part-bought'),
    part: Text,
    count: z.number().int().min(1).max(9999).optional(),
    price: Text.optional(),
    use: z.enum(partUses).optional(),
  }),
  /** What is left out stays as it was agreed; 0 minutes and empty texts are no limit any more. */
  z.strictObject({
    do: z.literal('limit'),
    minutes: z.number().min(0).optional(),
    money: Text.optional(),
    replace: Text.optional(),
  }),
  /** Seen, in own words or without, or passed over with its reason. */
  z.strictObject({
    do: z.literal('baseline'),
    item: Id,
    seen: Text.optional(),
    reason: Text.optional(),
  }),
  z.strictObject({
    do: z.literal('follow-up'),
    text: Text,
    urgency: z.enum(urgencies).optional(),
  }),
] as const;
