import { readAnswer } from '../../core/session/answer.ts';
import type { PayloadOf } from '../../core/session/event.ts';
import type { Story } from '../../core/session/story.ts';
import { today } from '../../core/session/today.ts';
import type { AskedCheck } from './question.ts';
import type { WalkInput } from '../screen.ts';

/** What the reading typed so far would be, if it is one already. */
export type TypedReading = {
  /** Index of the result whose band it falls in. */
  readonly index: number;
  readonly standard: PayloadOf<'found'>['standard'] | undefined;
};

export function typedReading(
  story: Story,
  asked: AskedCheck,
  input: WalkInput,
): TypedReading | undefined {
  if (input.kind !== 'reading' && input.kind !== 'insist') return undefined;
  const { id, check } = asked;
  const typed = { reading: input.typed, insist: true };
  const answered = readAnswer({ id, check, today: today(story) }, typed);
  return answered.kind === 'shown'
    ? { index: answered.index, standard: answered.shown.standard }
    : undefined;
}
