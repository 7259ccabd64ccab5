import * as z from 'zod';
import { Text, Worked, told, about, urgencies } from './shapes.ts';

/** What was said and kept beside the steps. */
export const remarkKinds = {
  noted: z.object({
    kind: z.literal('noted'),
    text: Text,
    /** A trade figure that was worked out and kept. */
    figure: Worked.optional(),
    ...about,
    ...told,
  }),
  photographed: z.object({ kind: z.literal('photographed'), file: Text, caption: Text, ...about }),
  timer: z.object({ kind: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  'follow-up': z.object({
    kind: z.literal('follow-up'),
    urgency: z.enum(urgencies),
    text: Text,
  }),
};
