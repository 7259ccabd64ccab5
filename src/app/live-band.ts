import { readAnswer } from '../core/session/answer.ts';
import type { Asking } from './asking.ts';
import type { WalkInput } from './screen.ts';

/** Index of the result that the reading typed so far would be, if it is one already. */
export function liveBand({ id, check }: Asking, input: WalkInput): number | undefined {
  if (input.kind !== 'reading' && input.kind !== 'insist') return undefined;
  const answered = readAnswer(id, check, { reading: input.typed, insist: true });
  return answered.kind === 'shown' ? answered.index : undefined;
}
