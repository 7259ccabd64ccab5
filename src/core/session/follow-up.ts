import { type PayloadOf } from './event.ts';
import { urgencies } from './kinds/shapes.ts';

type Urgency = PayloadOf<'follow-up'>['urgency'];

/** How soon something left to do must be done, as it is told before it. */
export const urgencyWords: Readonly<Record<Urgency, string>> = {
  unsafe: 'Before it is driven',
  soon: 'Soon',
  noticed: 'Noticed on the way',
};

/** The most urgent first; what is as urgent stays in its order. */
export const byUrgency = <T extends { readonly urgency: Urgency }>(
  list: readonly T[],
): readonly T[] => urgencies.flatMap((urgency) => list.filter((one) => one.urgency === urgency));
