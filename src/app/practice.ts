import { quickAdvice } from '../core/reason/advice/advise.ts';
import { inputFrom, leftOut, ownStep } from '../core/reason/history/from-story.ts';
import { gradedNames, suspectsNow } from '../core/reason/history/suspect-words.ts';
import { stepWords } from '../core/reason/history/wording.ts';
import { vehicleAnswer } from '../core/reason/practice/answer.ts';
import { isPractice } from '../core/session/header/is-practice.ts';
import type { HiddenFault } from '../core/session/rules/ruling.ts';
import { currentLeg, type Story } from '../core/session/story.ts';
import { unlisted } from '../core/tree/model.ts';
import type { OpenSession } from './state.ts';

/** What the rules may ask of the hidden fault of an open session; undefined in a job. */
export function hiddenFault({ header, secret }: OpenSession): HiddenFault | undefined {
  if (!isPractice(header)) return undefined;
  return {
    secret,
    hint,
    ...(secret !== undefined && {
      answer: (story: Story, check: string) => vehicleAnswer(story, secret, check),
    }),
  };
}

/** What the advice says now, in a line for the record: who is suspected, and the best next step. */
function hint(story: Story): ReturnType<NonNullable<HiddenFault['hint']>> {
  const input = inputFrom(story);
  if (input.kind === 'bad') return undefined;
  const own = ownStep(story);
  const advice = quickAdvice(input.value, { leaveOut: leftOut(story), ...(own && { own }) });
  if (advice.kind === 'bad') return undefined;
  const { tree } = currentLeg(story);
  const [first] = advice.value.next;
  const names = gradedNames(tree, suspectsNow(advice.value).slice(0, 3))
    .map((graded) => graded.replace(/^(\w+): (.*)$/, '$2 ($1)'))
    .join('; ');
  const step = first === undefined ? '' : `; best next: ${stepWords(tree, first)}`;
  return {
    says: `most suspected: ${names === '' ? 'none of the listed' : names}${step}`.slice(0, 2000),
    ...(first !== undefined && first.id !== unlisted && { next: { do: first.do, id: first.id } }),
  };
}

/** How practice goes, before its first step. */
export const practiceOffer = ({ secret }: OpenSession): string =>
  secret === undefined
    ? lostWords
    : 'Practice: y makes the check on screen, and the hidden vehicle answers.';

const lostWords =
  'What this practice hides is not on this machine any more: close it (c), the record says so.';
