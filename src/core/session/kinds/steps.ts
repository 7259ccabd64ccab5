import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Text, Count, told, despite, ofCause, shown, Settling } from './shapes.ts';

/** What was looked at, named, mended and proved. */
export const stepKinds = {
  'check-begun': z.object({
    kind: z.literal('check-begun'),
    check: Id,
    /** Cautions the mechanic said were read. */
    acknowledged: z.array(Id),
    /** Not begun by itself: the answer that comes with it said that the cautions were read. */
    implied: z.boolean().optional(),
    /** Passing states that it needs and the mechanic said are there again. */
    brought: z.array(Id).optional(),
    ...despite,
  }),
  /** What somebody expects a check to show, said before it is answered. */
  expected: z.object({ kind: z.literal('expected'), check: Id, result: Id }),
  found: z.object({ kind: z.literal('found'), ...shown, ...told }),
  unsure: z.object({ kind: z.literal('unsure'), check: Id, ...told }),
  skipped: z.object({ kind: z.literal('skipped'), check: Id, reason: Text, ...told }),
  condemned: z.object({
    kind: z.literal('condemned'),
    cause: Id,
    /** What exactly was found, and where, in the person's own words. */
    found: Text.optional(),
    /** Cautions of its repair the mechanic said were read. */
    acknowledged: z.array(Id).optional(),
    ...ofCause,
  }),
  /** A cause was looked at, its very part in the open, and it was not that. */
  'not-this': z.object({
    kind: z.literal('not-this'),
    cause: Id,
    /** Cautions of its repair the mechanic said were read. */
    acknowledged: z.array(Id),
    ...told,
  }),
  repaired: z.object({
    kind: z.literal('repaired'),
    cause: Id,
    did: Text.optional(),
    /** One part a text, as typed: `2 x fuse link at 3.50`. Empty: not noted; `none`: there were none. */
    parts: z.array(Text),
    minutes: z.number().min(0).optional(),
    cost: Text.optional(),
    acknowledged: z.array(Id),
    ...ofCause,
  }),
  /** What was said of a condemnation, a repair or a photograph after it was recorded; it counts as if said with it. */
  described: z.object({
    kind: z.literal('described'),
    of: Count,
    found: Text.optional(),
    caption: Text.optional(),
    did: Text.optional(),
    parts: z.array(Text).optional(),
    minutes: z.number().min(0).optional(),
    cost: Text.optional(),
  }),
  proved: z.object({ kind: z.literal('proved'), ...shown, good: z.boolean(), ...told }),
  settled: z.object({
    kind: z.literal('settled'),
    as: Settling,
    check: Id,
    /** The two findings that contradict one another. */
    earlier: Count,
    later: Count,
  }),
};
