import * as z from 'zod';
import { Check } from '../../tree/shapes.ts';
import { quantityNames } from '../../trade/units/quantities.ts';
import { Id } from '../../tree/basics.ts';
import { programText } from '../free-text.ts';
import { Text } from './shapes.ts';

/** Checks and causes that a person names in a job without a tree. */
export const ownKinds = {
  'check-named': z.object({
    kind: z.literal('check-named'),
    check: Id,
    does: Check.shape.kind,
    /** What is looked at, as a thing; of the complaint's own test, what is tried. */
    what: Text,
    /** What a healthy one shows. */
    good: Text.optional(),
    /** What it shows while something is wrong: of the complaint's own test. */
    bad: Text.optional(),
    /** The healthy band, read out of `good`: its lower end belongs to it, the upper one does not. */
    reading: z
      .object({
        quantity: z.enum(quantityNames),
        unit: programText(20),
        from: z.number().optional(),
        below: z.number().optional(),
      })
      .optional(),
    /** Cautions that its words call for. */
    cautions: z.array(Id),
    /** Begun at once: taken back with that. */
    implied: z.boolean().optional(),
  }),
  /** A check of a library's tree, taken into a job without one. */
  'check-taken': z.object({
    kind: z.literal('check-taken'),
    check: Id,
    /** The tree it was taken from. */
    tree: Id,
    /** The check as this vehicle has it and what it uses of the shop, so that the file carries everything. */
    whole: z.unknown(),
    shop: z.unknown(),
    implied: z.boolean().optional(),
  }),
  'cause-named': z.object({
    kind: z.literal('cause-named'),
    cause: Id,
    name: Text,
    where: Text.optional(),
    /** Cautions that its words call for. */
    cautions: z.array(Id),
  }),
};
