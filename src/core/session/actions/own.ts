import * as z from 'zod';
import { Check } from '../../tree/shapes.ts';
import { Id } from '../../tree/basics.ts';
import { groups } from '../../tree/groups.ts';
import { Text } from './shapes.ts';

/** What a person names in a job without a tree. */
export const ownActions = [
  z.strictObject({
    do: z.literal('name-check'),
    /** The complaint's own test; left out, another check. */
    test: z.boolean().optional(),
    does: Check.shape.kind.optional(),
    what: Text,
    good: Text.optional(),
    bad: Text.optional(),
  }),
  z.strictObject({ do: z.literal('take-check'), tree: Id, check: Id }),
  z.strictObject({ do: z.literal('name-cause'), name: Text, where: Text.optional() }),
  /** Another complaint that no tree is about, in the same session. */
  z.strictObject({
    do: z.literal('own-leg'),
    say: Text,
    /** The group of complaints it belongs to, where that is known. */
    about: z.enum(groups).optional(),
    reason: Text.optional(),
  }),
] as const;
