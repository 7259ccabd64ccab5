import { quickAdvice, refinedAdvice } from '../reason/advice/advise.ts';
import type { StepName } from '../reason/advice/minutes.ts';
import { inputFrom, leftOut, ownStep } from '../reason/history/from-story.ts';
import { isSame } from '../reason/history/regret.ts';
import { prudenceOf, usualPrudence, type Prudence } from '../reason/prudence.ts';
import { dueNow } from '../session/due.ts';
import type { Story } from '../session/story.ts';
import { hourWorths, sureties } from '../settings.ts';

/** What the tree itself leads to at a place, whatever somebody began or named there. */
const treeStep = (story: Story): StepName | undefined =>
  ownStep({ due: dueNow({ ...story, begun: undefined, condemned: [] }) });

/** Whether the tree's own way led to a step at one of these places. */
export const isOnWay = (places: readonly Story[], step: StepName): boolean =>
  places.some((story) => {
    const own = treeStep(story);
    return own !== undefined && isSame(own, step);
  });

/** Whether the quicker lead of the screens led to a step at one of these places. */
export const isQuickLead = (
  places: readonly Story[],
  step: StepName,
  prudence: Prudence = usualPrudence,
): boolean => places.some((story) => isFirst(story, step, quickAdvice, prudence));

/**
 * Whether any advice put a step first: settled at the usual weights, or the quick lead by another
 * person's settings. A repair leads sooner where less is sure enough, a check where more must be.
 */
export const isAdvisedSomehow = (story: Story, step: StepName): boolean =>
  isFirst(story, step, refinedAdvice, usualPrudence) ||
  hourWorths.some((hour) =>
    ([step.do === 'repair' ? leastSure : mostSure, '80'] as const).some((sure) =>
      isQuickLead([story], step, prudenceOf({ hour, sure })),
    ),
  );

const [leastSure] = sureties;
const mostSure = sureties[sureties.length - 1] ?? leastSure;

function isFirst(
  story: Story,
  step: StepName,
  advise: typeof quickAdvice,
  prudence: Prudence,
): boolean {
  const made = inputFrom(story, prudence);
  if (made.kind === 'bad') return false;
  const own = treeStep(story);
  const advice = advise(made.value, {
    leaveOut: leftOut(story),
    reckon: false,
    ...(own !== undefined && { own }),
  });
  const first = advice.kind === 'good' ? advice.value.next[0] : undefined;
  return first !== undefined && isSame(first, step);
}
