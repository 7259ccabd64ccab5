import * as z from 'zod';
import { closings } from './record/closing.ts';
import { Id } from '../tree/basics.ts';
import { Standing } from '../tree/shapes.ts';
import { freeText, programText } from './free-text.ts';

const Text = freeText();
const Count = z.number().int().min(0);

/** A value with the unit it was given in; `typed` is what the person typed. */
export const Amount = z.object({
  value: z.number(),
  unit: programText(20),
  typed: programText(200).optional(),
});

/** When the tool learned of a thing, four ways: see DEVELOPERS.md, "Time". */
export const Stamp = z.object({
  /** Wall time, ISO 8601 with offset. */
  at: z.string().max(40),
  /** Which opening of the file this belongs to. */
  run: z.string().max(40),
  /** Milliseconds since that opening; stops while the machine sleeps. */
  mono: z.number(),
  /** Seconds the machine has been up; goes on while it sleeps. */
  up: z.number(),
});

/** A trade figure as it was worked out, with what it rests on. */
export const Worked = z.object({
  figure: programText(60),
  inputs: z.record(z.string(), z.object({ value: z.unknown(), unit: programText(20) })),
  outputs: z.record(z.string(), z.object({ value: z.number(), unit: programText(20) })),
  verdict: programText().optional(),
  source: programText(),
  mark: programText(),
});

/** When it was, where that was not when it was written down; the record holds it with its offset. */
const told = { told: programText(40).optional() };
const about = { about: Id.optional() };
/** Safeguards of the tree that were passed, by the checks which should have come first, and why. */
const despite = { despite: z.object({ checks: z.array(Id).max(100), why: Text }).optional() };
const ofCause = { ...despite, ...told };

/** What a finding, an unsure answer or a proof says of its check. */
const shown = {
  check: Id,
  /** The result, or the healthier end of the two it may be. */
  result: Id,
  /** The other end, when the mechanic could only say "one of these". */
  orResult: Id.optional(),
  /** What was judged: the reading as it was taken, or what several come to. */
  reading: Amount.optional(),
  /** What the meter showed in place of a number, as typed: its range was exceeded. */
  beyond: programText(200).optional(),
  /** Each of several readings as it was taken, in the order of its check. */
  readings: z
    .array(z.union([Amount, z.object({ beyond: programText(20) })]))
    .max(200)
    .optional(),
  /** The reading brought to reference conditions, where its check asks for that. */
  standard: Amount.extend({ under: programText() }).optional(),
  /** The reading lies outside the plausible range and was insisted on. */
  insisted: z.boolean().optional(),
};

/**
 * What a finding that is worse than the one before it comes from, as the mechanic says: the earlier
 * one was misread, the later one was, the repair between brought it, or it comes and goes.
 */
export const Settling = z.enum(['misread-then', 'misread-now', 'new-since', 'comes-and-goes']);
export type Settling = z.output<typeof Settling>;

/** How soon something left to do must be done, the most urgent first. */
export const urgencies = ['unsafe', 'soon', 'noticed'] as const;

export const Conditions = z.object({
  altitude: Amount.optional(),
  temperature: Amount.optional(),
});

const kinds = {
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
  found: z.object({ kind: z.literal('found'), ...shown, ...told }),
  unsure: z.object({ kind: z.literal('unsure'), check: Id, ...told }),
  skipped: z.object({ kind: z.literal('skipped'), check: Id, reason: Text, ...told }),
  noted: z.object({
    kind: z.literal('noted'),
    text: Text,
    /** A trade figure that was worked out and kept. */
    figure: Worked.optional(),
    ...about,
    ...told,
  }),
  photographed: z.object({ kind: z.literal('photographed'), file: Text, caption: Text, ...about }),
  'part-off': z.object({ kind: z.literal('part-off'), part: Text, where: Text.optional() }),
  'part-on': z.object({ kind: z.literal('part-on'), part: Text }),
  /** Something put on for a while that must come off again: a bridge, a jumper, a clamp, a plug. */
  'aid-on': z.object({ kind: z.literal('aid-on'), aid: Text }),
  'aid-off': z.object({ kind: z.literal('aid-off'), aid: Text }),
  timer: z.object({ kind: z.literal('timer'), label: Text, minutes: z.number().positive() }),
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
  /** What was said of a condemnation or a repair after it was recorded; it counts as if said with it. */
  described: z.object({
    kind: z.literal('described'),
    of: Count,
    found: Text.optional(),
    did: Text.optional(),
    parts: z.array(Text).optional(),
    minutes: z.number().min(0).optional(),
    cost: Text.optional(),
  }),
  proved: z.object({ kind: z.literal('proved'), ...shown, good: z.boolean(), ...told }),
  leg: z.object({
    kind: z.literal('leg'),
    tree: Id,
    reason: Text.optional(),
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
  settled: z.object({
    kind: z.literal('settled'),
    as: Settling,
    check: Id,
    /** The two findings that contradict one another. */
    earlier: Count,
    later: Count,
  }),
  'follow-up': z.object({
    kind: z.literal('follow-up'),
    urgency: z.enum(urgencies),
    text: Text,
  }),
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

export type Kind = keyof typeof kinds;
export const eventKinds = Object.keys(kinds) as readonly Kind[];

/** Whether this version knows a kind. */
export const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind);

/** The model of what events of a kind say. */
export const modelOf = (kind: Kind): (typeof kinds)[Kind] => kinds[kind];

/** What an event says, without its number and time. */
export type Payload = { [K in Kind]: z.output<(typeof kinds)[K]> }[Kind];
export type PayloadOf<K extends Kind> = z.output<(typeof kinds)[K]>;

export type Stamp = z.output<typeof Stamp>;
export type Amount = z.output<typeof Amount>;
export type Conditions = z.output<typeof Conditions>;

/** One line of a session after the header. `n` counts from 1. */
export type Event = Stamp & { readonly n: number } & Payload;

/** A kind that this version does not know: kept in the file, shown as such, folded into nothing. */
export type UnknownEvent = Stamp & {
  readonly n: number;
  readonly kind: 'unknown';
  readonly was: string;
};

const Chained = Stamp.extend({ n: Count, previous: z.string(), link: z.string() });

/** An event as it stands on its line, with the links of the chain. */
export const EventLine = z.union(
  Object.values(kinds).map((model) => z.object({ ...Chained.shape, ...model.shape })),
);
