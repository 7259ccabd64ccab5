import { settledFrom } from '../reason/advice/explain.ts';
import type { NextStep } from '../reason/advice/advice.ts';
import { inputFrom, leftOut } from '../reason/history/from-story.ts';
import { isSame, regretOf, type Regret } from '../reason/history/regret.ts';
import { partedBy } from '../reason/belief/parting.ts';
import { suspectsNow } from '../reason/history/suspect-words.ts';
import { percent } from '../reason/history/wording.ts';
import { unlisted } from '../tree/model.ts';
import { causeThing, joined } from '../account/words/wording.ts';
import { currentLeg, type Story } from '../session/story.ts';
import type { Better, Decision, Moment } from './decision.ts';
import { isAdvisedSomehow } from './leads.ts';

/** What is charged of a decision, and what would have been better. */
export type Weighed = Pick<Decision, 'kind' | 'better' | 'charged' | 'tellsNothing'>;

export const nothingCharged = { better: undefined, charged: 0, tellsNothing: false } as const;

/**
 * What a free choice gave away. It is charged in whole minutes, never more than the step took by the
 * clock nor than it is planned to take alone. What any advice led to is charged to nobody.
 */
export function weighed({ before, finished, step, planned, taken }: Moment): Weighed {
  const made = inputFrom(before);
  const leaveOut = [...leftOut(before), ...neverToBeHad(finished)];
  const regret = made.kind === 'good' ? regretOf(made.value, step, { leaveOut }) : made;
  if (regret.kind === 'bad') return { kind: 'own', ...nothingCharged };
  const { minutes, tellsNothing } = regret.value;
  const charged = Math.floor(Math.min(minutes, taken, planned ?? 0) + 1e-9);
  const better = betterThan(before, regret.value, step);
  if (better === undefined && !tellsNothing) return { kind: 'chosen', ...nothingCharged };
  return isAdvisedSomehow(before, step)
    ? { kind: 'followed', ...nothingCharged }
    : { kind: 'chosen', better, charged, tellsNothing };
}

/** Checks that were passed over at any time for want of a tool, a helper or light: nobody is blamed for these. */
const neverToBeHad = ({ skipped }: Story): readonly { do: 'check'; id: string }[] =>
  skipped.map(({ check }) => ({ do: 'check', id: check }));

/** Minutes that are worth a word: our own judgment. */
const worthAWord = 1;

function betterThan(story: Story, regret: Regret, step: Moment['step']): Better | undefined {
  const { best, minutes, heldBy, advice } = regret;
  if (minutes < worthAWord) return undefined;
  const waited = advice.next.find(({ do: kind, id }) => kind === 'check' && id === heldBy);
  const instead = waited ?? best;
  return instead === undefined || isSame(instead, step)
    ? undefined
    : { step: instead, because: becauseWords(story, regret, instead) };
}

const nameOf = (story: Story, cause: string): string =>
  cause === unlisted ? 'something not on the list' : causeThing(story, cause);

/** Why a step would have been better, as the advice weighs it. */
function becauseWords(story: Story, { advice }: Regret, { do: kind, id, why }: NextStep): string {
  const { tree } = currentLeg(story);
  if (why.kind === 'proof') return 'the repair before it still waited for its proof';
  if (why.kind === 'again') return 'everything else waited for it';
  if (kind === 'repair') {
    const chance = advice.suspects.find(({ cause }) => cause === id)?.chance ?? 0;
    return `${nameOf(story, id)} stood at ${percent(chance)}, and nothing short was left that would have told more`;
  }
  const parting = partedBy(tree, id, suspectsNow(advice));
  if (parting !== undefined) {
    const [one = [], other = []] = parting.sides.map(({ suspects }) => suspects.slice(0, 2));
    const names = (ids: readonly string[]): string =>
      joined(ids.map((cause) => nameOf(story, cause)));
    return `it parts ${names(one)} from ${names(other)}`;
  }
  return why.kind === 'check' && why.settles >= 0.5
    ? `it would have put one suspect over ${percent(settledFrom)} in ${percent(why.settles)} of such cases`
    : 'it tells more for its minutes';
}
