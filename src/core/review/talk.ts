import { clockTime } from '../session/clock.ts';
import type { Story } from '../session/story.ts';
import { joined, numberWord, sentence } from '../account/words/wording.ts';
import type { Decision, DecisionKind } from './decision.ts';
import type { Told } from './shape.ts';
import {
  betterWords,
  chosenWords,
  expectedWords,
  foundWords,
  knownWords,
  stepThing,
} from './telling.ts';
import { worthTalking, type Topic, type Worth } from './worth.ts';

const titles: Readonly<Record<Topic, string>> = {
  safeguard: 'a safeguard was passed',
  guess: 'a repair on a guess',
  quicker: 'a better step stood open',
  disagree: 'two findings do not agree, and nobody said why',
  vain: 'a check that could tell nothing any more',
  verified: 'a doubtful finding was looked at again',
  misjudged: 'an expectation against the odds',
  look: 'looked before mending',
  'own-way': 'off the way, and well chosen',
  surprise: 'a finding that few would have expected',
  failed: 'a repair that did not cure',
  settled: 'the finding that settled it',
  turn: 'where the lead changed',
  unsure: 'a reading that could not be told',
  passed: 'a check that was passed over',
  slow: 'a step that took its time',
};

/** What a mentor may ask first: the record cannot answer it. */
const questions: Readonly<Record<Topic, string>> = {
  safeguard: 'what made it safe to go on?',
  guess: 'what spoke for it, and what would have changed your mind?',
  quicker: 'what was this step to tell, and what else would have told it?',
  disagree: 'which of the two do you believe, and how would you find out?',
  vain: 'what could it have shown that would have changed the next step?',
  verified: 'what made you look twice?',
  misjudged: 'why did you expect that?',
  look: 'what did you look for?',
  'own-way': 'what made you leave the way?',
  surprise: 'did you believe it at once, and was it read twice?',
  failed: 'what did the failed proof say about the suspects that were left?',
  settled: 'would one more reading have been worth its minutes before the repair?',
  turn: 'what did you think it was before this, and after?',
  unsure: 'what would make it tell: another meter, another place, another pair of hands?',
  passed: 'who or what would have made it possible, and what was done instead?',
  slow: 'what held it up?',
};

export const talkOf = (story: Story, decisions: readonly Decision[]): readonly Told[] =>
  worthTalking(story, decisions).map((worth) => toldOf(story, worth));

const toldOf = (story: Story, { decision, topic }: Worth): Told => ({
  n: decision.n,
  title: `${clockTime(decision.at)}, ${stepThing(story, decision)}: ${titles[topic]}`,
  known: knownWords(story, decision),
  expected: expectedWords(story, decision),
  chosen: chosenWords(story, decision),
  found: foundWords(story, decision),
  better: betterWords(story, decision),
  ask: `To ask: ${questions[topic]}`,
});

const sorts: Readonly<Record<DecisionKind, readonly [one: string, several: string]>> = {
  asked: ['was asked of everybody', 'were asked of everybody'],
  proof: ['was a proof', 'were proofs'],
  followed: ['was what the screen led to', 'were what the screen led to'],
  verified: ['was a second look', 'were second looks'],
  look: ['was an open look at a suspect', 'were open looks at suspects'],
  own: ['was chosen without odds to weigh it by', 'were chosen without odds to weigh them by'],
  unsure: ['could not be told', 'could not be told'],
  passed: ['was passed over with a reason', 'were passed over with a reason'],
  chosen: ['was chosen freely', 'were chosen freely'],
};

/** The other steps together: nobody has to go through a job step by step. */
export function restWords(decisions: readonly Decision[], told: readonly Told[]): string {
  const rest = decisions.filter(({ n }) => !told.some((one) => one.n === n));
  const parts = Object.entries(sorts).flatMap(([kind, [one, several]]) => {
    const steps = rest.filter((decision) => decision.kind === kind);
    return steps.length === 0
      ? []
      : [`${numberWord(steps.length)} ${steps.length === 1 ? one : several}`];
  });
  return parts.length === 0 ? '' : sentence(`of the other steps ${joined(parts)}`);
}
