import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { urgencies, Worked } from '../kinds/shapes.ts';
import { Text, told } from './shapes.ts';

/** What was said and kept beside the steps. */
export const remarkActions = [
  z.strictObject({
    do: z.literal('note'),
    text: Text,
    about: Id.optional(),
    figure: Worked.optional(),
    ...told,
  }),
  z.strictObject({ do: z.literal('photo'), file: Text, caption: Text, about: Id.optional() }),
  z.strictObject({ do: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  z.strictObject({
    do: z.literal('follow-up'),
    text: Text,
    urgency: z.enum(urgencies).optional(),
  }),
] as const;
