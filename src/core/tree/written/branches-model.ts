import * as z from 'zod';
import { Id, Minutes, Text, When } from '../basics.ts';
import { Check } from '../shapes.ts';
import { Leads, WrittenCheck } from './written-check.ts';

const { kind, access, standing, cautions, tools, shut, after, same } = Check.shape;

/** What one of the two results of a probe is called. */
const Shown = z.strictObject({ label: Text, told: Text.optional() });

/**
 * How some branches are parted together to see whether the fault is among them. In its texts
 * `{these}` stands for their names, and `{row}` for the same in a few words: "radio to heater (4)".
 */
const Probe = z.strictObject({
  kind,
  ask: Text,
  how: z.array(Text).min(1),
  healthy: Text,
  /** Minutes of each probe, besides those of the branches it parts. */
  minutes: Minutes,
  access,
  standing,
  cautions,
  tools,
  shut,
  after,
  same,
  told: Text.optional(),
  /** Nothing changes: the fault is on none of them. */
  elsewhere: Shown,
  /** It goes, or falls: the fault is on one of them. */
  here: Shown,
  /** Of a hundred probes, how many show it where it is not. */
  sound: z.number().min(0.5).max(20).optional(),
  when: When.optional(),
  source: Text,
});

export const Branch = z.strictObject({
  /** The branch in a sentence: "the radio fuse". */
  name: Text,
  /** The same in a word or two, as lists say it: "radio". Left out: the name without "the". */
  short: Text.max(24).optional(),
  /** Minutes to part it and to put it back. */
  minutes: Minutes,
  /** Of a hundred vehicles with that cause, on how many it is on this branch. */
  hangs: z.record(Id, z.number().min(0).max(100)),
  /** Where the way goes on once it is known to be this one; left out: to the look. */
  next: z.union([Text, Leads]).optional(),
  reason: Text.optional(),
});

/** One branch of several: which of them it is on, found by parting about half of them at a time. */
export const Branches = z.strictObject({
  probe: Probe,
  /** What is looked at on the one that was found; `{branch}` in its texts stands for its name. */
  look: WrittenCheck.optional(),
  of: z.record(Id, Branch),
  /** When it is on none of them. */
  none: z.strictObject({
    /** Of a hundred vehicles on which they are parted, on how many; left out: by what hangs on them. */
    share: z.number().min(0).max(99).optional(),
    next: z.union([Text, Leads]),
    reason: Text.optional(),
  }),
});

export type Branches = z.output<typeof Branches>;
export type Branch = z.output<typeof Branch>;
