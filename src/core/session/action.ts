import * as z from 'zod';
import { closings } from './record/closing.ts';
import { Id } from '../tree/basics.ts';
import { Standing } from '../tree/shapes.ts';
import { isTime } from './clock.ts';
import { Settling, urgencies, Worked } from './event.ts';

const Text = z.string().max(20_000);
/** `2026-04-11T10:42+02:00`; without its offset it takes that of the session. */
const Time = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)?$/, 'an ISO 8601 time')
  .refine(isTime, 'a time that there is');

const told = { told: Time.optional() };
/** Why a step is taken although a safeguard of the tree comes first. */
const despite = { despite: Text.optional() };
/** The cautions of a step were read: all of them, or these. */
const readByName = z.union([z.boolean(), z.array(Id)]).optional();
const answer = {
  result: Id.optional(),
  /** The other of two results it may be. */
  orResult: Id.optional(),
  reading: z.union([z.string(), z.number()]).optional(),
  /** Take the reading although it lies outside the plausible range. */
  insist: z.boolean().optional(),
  /** The cautions of this step were read. */
  acknowledged: z.boolean().optional(),
};

/** What was done: `[]` or `["none"]` says that there were no parts; what is left out is not noted. */
const done = {
  text: Text.optional(),
  parts: z.array(Text).optional(),
  minutes: z.number().min(0).optional(),
  cost: Text.optional(),
};

/**
 * Everything that a person can do to a session: what the screens make of keys and what
 * `droplight enter` reads, one JSON object a line.
 */
export const Action = z.discriminatedUnion('do', [
  z.strictObject({
    do: z.literal('conditions'),
    altitude: Text.optional(),
    temperature: Text.optional(),
    notKnown: z.array(z.enum(['altitude', 'temperature'])).optional(),
  }),
  z.strictObject({ do: z.literal('standing'), ...Standing.shape, ...despite }),
  z.strictObject({ do: z.literal('access'), open: Id.optional(), close: Id.optional() }),
  z.strictObject({
    do: z.literal('begin'),
    check: Id,
    acknowledged: readByName,
    /** The passing state that the check needs, and that an earlier step has spent, is there again. */
    brought: z.boolean().optional(),
    ...despite,
  }),
  z.strictObject({ do: z.literal('find'), check: Id, ...answer, ...despite, ...told }),
  z.strictObject({
    do: z.literal('unsure'),
    check: Id,
    between: z.tuple([Id, Id]).optional(),
    ...despite,
    ...told,
  }),
  z.strictObject({ do: z.literal('skip'), check: Id, reason: Text, ...told }),
  z.strictObject({
    do: z.literal('note'),
    text: Text,
    about: Id.optional(),
    figure: Worked.optional(),
    ...told,
  }),
  z.strictObject({ do: z.literal('photo'), file: Text, caption: Text, about: Id.optional() }),
  z.strictObject({ do: z.literal('part-off'), part: Text, where: Text.optional() }),
  z.strictObject({ do: z.literal('part-on'), part: Text }),
  z.strictObject({ do: z.literal('aid-on'), aid: Text }),
  z.strictObject({ do: z.literal('aid-off'), aid: Text }),
  z.strictObject({ do: z.literal('timer'), label: Text, minutes: z.number().positive() }),
  z.strictObject({
    do: z.literal('condemn'),
    cause: Id,
    /** What exactly was found, and where. */
    text: Text.optional(),
    acknowledged: readByName,
    ...despite,
    ...told,
  }),
  z.strictObject({
    do: z.literal('not-this'),
    cause: Id,
    acknowledged: readByName,
    ...told,
  }),
  z.strictObject({
    do: z.literal('repair'),
    cause: Id,
    ...done,
    acknowledged: z.boolean().optional(),
    ...despite,
    ...told,
  }),
  z.strictObject({
    do: z.literal('describe'),
    /** The condemnation or the repair; left out, the last of them. */
    n: z.number().int().min(1).optional(),
    ...done,
  }),
  z.strictObject({ do: z.literal('prove'), check: Id.optional(), ...answer, ...despite, ...told }),
  z.strictObject({
    do: z.literal('correct'),
    n: z.number().int().min(1),
    ...answer,
    cause: Id.optional(),
    ...done,
    withdraw: z.boolean().optional(),
    reason: Text.optional(),
  }),
  /** Takes back the last thing that was written and stands. */
  z.strictObject({ do: z.literal('take-back') }),
  z.strictObject({
    do: z.literal('settle'),
    as: Settling,
    /** The later of the two findings; left out, the newest contradiction that is open. */
    n: z.number().int().min(1).optional(),
  }),
  z.strictObject({ do: z.literal('leg'), tree: Id, reason: Text.optional() }),
  z.strictObject({
    do: z.literal('follow-up'),
    text: Text,
    urgency: z.enum(urgencies).optional(),
  }),
  z.strictObject({ do: z.literal('pause') }),
  z.strictObject({ do: z.literal('reopen') }),
  z.strictObject({
    do: z.literal('close'),
    as: z.enum(closings).optional(),
    text: Text.optional(),
  }),
]);

export type Action = z.output<typeof Action>;
export type ActionOf<D extends Action['do']> = Extract<Action, { do: D }>;
