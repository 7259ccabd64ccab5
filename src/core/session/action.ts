import * as z from 'zod';
import { courseActions } from './actions/course.ts';
import { ownActions } from './actions/own.ts';
import { practiceActions } from './actions/practice.ts';
import { remarkActions } from './actions/remarks.ts';
import { stepActions } from './actions/steps.ts';
import { vehicleActions } from './actions/vehicle.ts';

/**
 * Everything that a person can do to a session: what the screens make of keys and what
 * `droplight enter` reads, one JSON object a line.
 */
export const Action = z.discriminatedUnion('do', [
  ...vehicleActions,
  ...stepActions,
  ...ownActions,
  ...remarkActions,
  ...courseActions,
  ...practiceActions,
]);

export type Action = z.output<typeof Action>;
export type ActionOf<D extends Action['do']> = Extract<Action, { do: D }>;
