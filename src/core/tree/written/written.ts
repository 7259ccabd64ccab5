import * as z from 'zod';
import { Id, Minutes } from '../basics.ts';
import { Cause, Repair, Tree } from '../shapes.ts';
import { Branches } from './branches-model.ts';
import { varying } from './varying.ts';
import { WrittenCheck } from './written-check.ts';

export {
  oftenWords,
  type Certain,
  type Shares,
  type WrittenCheck,
  type WrittenResult,
} from './written-check.ts';

export const WrittenCause = Cause.extend({
  odds: varying(Cause.shape.odds),
  repair: Repair.extend({ minutes: varying(Minutes) }),
});

/** A tree as its file holds it, of either format. */
export const Written = Tree.extend({
  causes: z.record(Id, WrittenCause),
  checks: z.record(Id, WrittenCheck),
  /** Where one branch of several has to be found; each by the id of its first check. */
  branches: z.record(Id, Branches).optional(),
});

export type Written = z.output<typeof Written>;
export type WrittenCause = z.output<typeof WrittenCause>;
