import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { partUses } from '../costs/parts.ts';
import { programText } from '../free-text.ts';
import { Count, Subject, Text, Worked, told, about, urgencies } from './shapes.ts';

/** What was said and kept beside the steps. */
export const remarkKinds = {
  noted: z.object({
    kind: z.literal('noted'),
    text: Text,
    /** A trade figure that was worked out and kept. */
    figure: Worked.optional(),
    /** Taken down on the road test, one line after the other. */
    on: z.literal('road').optional(),
    ...about,
    ...told,
  }),
  photographed: z.object({
    kind: z.literal('photographed'),
    /** Beside the session: `2026-04-11-1042-van-no-supply.photos/01-bulkhead.jpg`. */
    file: Text,
    /** Empty: not noted. */
    caption: Text,
    /** The step it belongs to. */
    about: Subject.optional(),
    /** SHA-256 of its bytes as they were kept, and how many; older records have neither. */
    sha256: programText(64).optional(),
    bytes: Count.optional(),
  }),
  timer: z.object({ kind: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  /** A timer was stopped, or put away when it had run out. */
  'timer-off': z.object({ kind: z.literal('timer-off'), of: Count }),
  /** A part bought apart from a repair: a spare, or what is used up in the work. */
  'part-bought': z.object({
    kind: z.literal('part-bought'),
    part: Text,
    count: z.number().int().min(1).max(9999).optional(),
    /** What one of them cost, as typed. */
    price: Text.optional(),
    use: z.enum(partUses),
  }),
  /** What time and money the job may take, as agreed; the whole of it, empty where no limit was agreed. */
  limit: z.object({
    kind: z.literal('limit'),
    minutes: z.number().positive().optional(),
    /** As typed; it can be read as an amount. */
    money: Text.optional(),
    /** What may be replaced without asking. */
    replace: Text.optional(),
  }),
  /** One thing of the shop's baseline, taken down before anything was disturbed, or passed over. */
  baseline: z.object({
    kind: z.literal('baseline'),
    item: Id,
    /** Empty: looked at, and nothing written of it. */
    seen: Text.optional(),
    /** Why it was passed over. */
    reason: Text.optional(),
  }),
  'follow-up': z.object({
    kind: z.literal('follow-up'),
    urgency: z.enum(urgencies),
    text: Text,
  }),
};
