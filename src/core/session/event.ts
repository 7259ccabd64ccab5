import * as z from 'zod';
import { Id } from '../tree/basics.ts';
import { Standing } from '../tree/model.ts';
import { withOffset } from './clock.ts';

const Text = z.string().max(20_000);
const Count = z.number().int().min(0);

/** A value with the unit it was given in; `typed` is what the person typed. */
export const Amount = z.object({
  value: z.number(),
  unit: z.string().max(20),
  typed: z.string().max(200).optional(),
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
  figure: z.string().max(60),
  inputs: z.record(z.string(), z.object({ value: z.unknown(), unit: z.string() })),
  outputs: z.record(z.string(), z.object({ value: z.number(), unit: z.string() })),
  verdict: z.string().optional(),
  source: z.string(),
  mark: z.string(),
});

/** When it was, where that was not when it was written down; the record holds it with its offset. */
const told = { told: z.string().max(40).optional() };
const about = { about: Id.optional() };

/** What a finding, an unsure answer or a proof says of its check. */
const shown = {
  check: Id,
  /** The result, or the healthier end of the two it may be. */
  result: Id,
  /** The other end, when the mechanic could only say "one of these". */
  orResult: Id.optional(),
  reading: Amount.optional(),
  /** The reading brought to reference conditions, where its check asks for that. */
  standard: Amount.extend({ under: Text }).optional(),
  /** The reading lies outside the plausible range and was insisted on. */
  insisted: z.boolean().optional(),
};

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
  timer: z.object({ kind: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  condemned: z.object({
    kind: z.literal('condemned'),
    cause: Id,
    /** Cautions of its repair the mechanic said were read. */
    acknowledged: z.array(Id).optional(),
    ...told,
  }),
  repaired: z.object({
    kind: z.literal('repaired'),
    cause: Id,
    did: Text.optional(),
    parts: z.array(Text),
    minutes: z.number().min(0).optional(),
    cost: Text.optional(),
    acknowledged: z.array(Id),
    ...told,
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
    reason: Text.optional(),
  }),
  'follow-up': z.object({
    kind: z.literal('follow-up'),
    urgency: z.enum(['unsafe', 'soon', 'noticed']),
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
    as: z.enum(['fixed', 'handed-on', 'given-up', 'not-reproduced']),
    text: Text.optional(),
    leftOpen: z.array(Text),
  }),
};

export type Kind = keyof typeof kinds;
export const eventKinds = Object.keys(kinds) as readonly Kind[];

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

const Numbered = Stamp.extend({ n: Count, kind: z.string().max(40) });

/** Reads one event from a line's JSON value; undefined when it is no event of ours at all. */
export function parseEvent(value: unknown): Event | UnknownEvent | undefined {
  const numbered = Numbered.safeParse(value);
  if (!numbered.success) return undefined;
  const { kind, ...stamp } = numbered.data;
  if (!Object.hasOwn(kinds, kind)) return { ...stamp, kind: 'unknown', was: kind };
  const payload = parsePayload(kind as Kind, value, stamp.at);
  return payload && { ...stamp, ...payload };
}

/**
 * Holds what an event or its correction says against the model of its kind. Old files hold times
 * told without an offset: they are read with that of `at`, the time of the event itself.
 */
export function parsePayload(kind: Kind, value: unknown, at: string): Payload | undefined {
  const payload = kinds[kind].safeParse(value);
  return payload.success ? zoned(payload.data, at) : undefined;
}

/** An event to be written; a time told without an offset takes the one that the session has now. */
export const newEvent = (n: number, stamp: Stamp, payload: Payload): Event => ({
  n,
  ...stamp,
  ...zoned(payload, stamp.at),
});

const zoned = (payload: Payload, at: string): Payload =>
  'told' in payload && payload.told !== undefined
    ? { ...payload, told: withOffset(payload.told, at) }
    : payload;
