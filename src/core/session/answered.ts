import type { Problem } from '../problem.ts';
import type { Conditions } from '../trade/standard.ts';
import type { Facts } from '../tree/facts.ts';
import type { Check } from '../tree/model.ts';
import type { PayloadOf } from './event.ts';
import { today } from './today.ts';
import type { Standpoint } from './story.ts';

/** The check that is answered, and what is known of the vehicle and the day, which it is judged by. */
export type AskedCheck = {
  readonly id: string;
  readonly check: Check;
  readonly today: Conditions;
  readonly facts: Facts;
};

/** A check as it is asked where a session stands now. */
export const askedNow = (
  story: Pick<Standpoint, 'conditions' | 'facts'>,
  id: string,
  check: Check,
): AskedCheck => ({ id, check, today: today(story), facts: story.facts });

type Shown = Omit<PayloadOf<'found'>, 'kind' | 'told'>;

/** What an answer says that a check showed, or why it cannot be taken. */
export type Answered =
  | {
      readonly kind: 'shown';
      readonly shown: Shown;
      /** Place of the result it stands in: of two that were picked, the healthier. */
      readonly index: number;
      /** The condition that the reading could not be judged by, since it is not known. */
      readonly needs?: keyof Conditions;
    }
  | { readonly kind: 'refused'; readonly problem: Problem };

export const refused = (code: string, message: string, mend: string, value?: string): Answered => ({
  kind: 'refused',
  problem: { code, message, mend, ...(value !== undefined && { value }) },
});
