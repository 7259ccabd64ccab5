import * as z from 'zod';
import { closings } from '../record/closing.ts';
import { Id } from '../../tree/basics.ts';
import { Text, answer, done } from './shapes.ts';

/** What is told of the vehicle for the tree that is begun. */
const told = {
  facts: z.record(Id, z.string().max(200)).optional(),
  sheet: z.record(Id, z.strictObject({ reading: Text, where: Text.optional() })).optional(),
};

/** How the job runs: on to another tree, put right, put down, taken up, ended. */
export const courseActions = [
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
  /** On to the tree that this one leads to, with what that one asks of the vehicle. */
  z.strictObject({ do: z.literal('leg'), tree: Id, reason: Text.optional(), ...told }),
  /** Another complaint of the owner, on the same job. */
  z.strictObject({
    do: z.literal('complaint'),
    tree: Id,
    words: Text.optional(),
    ...told,
  }),
  z.strictObject({ do: z.literal('worker'), who: z.string().trim().min(1).max(200) }),
  z.strictObject({ do: z.literal('pause') }),
  z.strictObject({ do: z.literal('reopen') }),
  z.strictObject({
    do: z.literal('close'),
    as: z.enum(closings).optional(),
    text: Text.optional(),
  }),
] as const;
