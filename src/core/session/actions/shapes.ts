import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { isTime } from '../clock.ts';

/** Words as they were typed. */
export const Text = z.string().max(20_000);
/** `2026-04-11T10:42+02:00`; without its offset it takes that of the session. */
const Time = z
  .string()
  .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d(\.\d+)?)?(Z|[+-]\d\d:\d\d)?$/, 'an ISO 8601 time')
  .refine(isTime, 'a time that there is');

/** When it was, where that was not now. */
export const told = { told: Time.optional() };
/** Why a step is taken although a safeguard of the tree comes first. */
export const despite = { despite: Text.optional() };
/** The cautions of a step were read: all of them, or these. */
export const readByName = z.union([z.boolean(), z.array(Id)]).optional();
/** What a check showed. */
export const answer = {
  /** What exactly was found, in own words. */
  text: Text.optional(),
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
export const done = {
  text: Text.optional(),
  parts: z.array(Text).optional(),
  minutes: z.number().min(0).optional(),
  cost: Text.optional(),
};
