import * as z from 'zod';
import { closings } from '../record/closing.ts';
import { Id } from '../../tree/basics.ts';
import { Sheet } from '../vehicle/vehicle.ts';
import { Count, Name, Text } from './shapes.ts';

/** How the job runs: on to another tree, put right, put down, taken up, ended. */
export const courseKinds = {
  leg: z.object({
    kind: z.literal('leg'),
    tree: Id,
    reason: Text.optional(),
    /** Another complaint of the owner, in their words where they are noted: no tree led to it. */
    complaint: z.object({ words: Text.optional() }).optional(),
    /** What was told of the vehicle for it, and figures of its book. */
    facts: z.record(Id, Id).optional(),
    sheet: Sheet.optional(),
    /** The whole tree and what it uses of the shop, so that the file carries everything. */
    whole: z.unknown(),
    shop: z.unknown(),
  }),
  corrected: z.object({
    kind: z.literal('corrected'),
    of: Count,
    /** What the event should have said; left out when it should not have been said at all. */
    to: z.record(z.string(), z.unknown()).optional(),
    /** The correction that this one takes back. */
    undoes: Count.optional(),
    reason: Text.optional(),
  }),
  /** Who works from here on. */
  worker: z.object({ kind: z.literal('worker'), who: Name }),
  paused: z.object({ kind: z.literal('paused') }),
  resumed: z.object({
    kind: z.literal('resumed'),
    /** Bytes at the end of the file that a power cut had torn; readers skip them. */
    torn: z.number().optional(),
  }),
  closed: z.object({
    kind: z.literal('closed'),
    as: z.enum(closings),
    text: Text.optional(),
    leftOpen: z.array(Text),
  }),
  /** A closed job is worked on again. */
  reopened: z.object({ kind: z.literal('reopened') }),
};
