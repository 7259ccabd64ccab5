import * as z from 'zod';
import { Id } from '../../tree/basics.ts';
import { Settling } from '../kinds/shapes.ts';
import { Text, told, despite, readByName, answer, done } from './shapes.ts';

/** What was looked at, named, mended and proved. */
export const stepActions = [
  z.strictObject({
    do: z.literal('begin'),
    check: Id,
    acknowledged: readByName,
    /** The passing state that the check needs, and that an earlier step has spent, is there again. */
    brought: z.boolean().optional(),
    ...despite,
  }),
  /** What is expected of a check, before it is answered. */
  z.strictObject({ do: z.literal('expect'), check: Id, result: Id }),
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
    do: z.literal('settle'),
    as: Settling,
    /** The later of the two findings; left out, the newest contradiction that is open. */
    n: z.number().int().min(1).optional(),
  }),
] as const;
