import { isOwn } from '../tree/own/bare.ts';
import { isPractice } from '../session/header/is-practice.ts';
import { fold, type Recorded } from '../session/fold.ts';
import { firstLeg, type Story } from '../session/story.ts';
import { comparisonOf } from './comparison.ts';
import { givenAway, isGuess, type Decision } from './decision.ts';
import { decisionsOf } from './decisions.ts';
import { expectationsOf } from './expectations.ts';
import { habitsOf } from './habits.ts';
import { usualVehicles, type Review, type Share } from './shape.ts';
import { skillsOf } from './skills.ts';
import { restWords, talkOf } from './talk.ts';

type ReviewOptions = {
  /** Vehicles with the same fault that are made up for the comparison; none for no comparison. */
  readonly vehicles?: number;
};

/** Looks at one session as a mentor would; `session` is its name. */
export function reviewOf(
  session: string,
  recorded: Recorded,
  { vehicles = usualVehicles }: ReviewOptions = {},
): Review {
  const story = fold(recorded.header, recorded.events);
  const decisions = decisionsOf(recorded);
  const talk = talkOf(story, decisions);
  const workers = workersOf(story, decisions);
  return {
    session,
    who: story.header.who,
    workers,
    vehicle: story.header.vehicle.name,
    practice: isPractice(story.header),
    opened: story.header.opened,
    complaint: firstLeg(story).tree.title,
    withoutTree: isOwn(firstLeg(story).tree),
    closed: story.closed?.as ?? 'open',
    minutes: {
      used: story.minutes,
      givenAway: givenAway(decisions),
      comparison: comparisonOf(story, vehicles),
    },
    decisions,
    talk,
    rest: restWords(decisions, talk),
    guesses: decisions.filter(isGuess).length,
    skills: skillsOf(recorded, decisions),
    people: workers.map((who) => shareOf(recorded, decisions, who)),
    expectations: expectationsOf(decisions),
    habits: habitsOf(story),
  };
}

/** Whoever did a step, in their order; who opened the job and did none is not among them. */
const workersOf = (story: Story, decisions: readonly Decision[]): readonly string[] => {
  const named = decisions.flatMap(({ who }) => (who === undefined || who === '' ? [] : [who]));
  return named.length === 0 && story.header.who !== '' ? [story.header.who] : [...new Set(named)];
};

function shareOf(recorded: Recorded, decisions: readonly Decision[], who: string): Share {
  const mine = decisions.filter((one) => one.who === who);
  return {
    who,
    skills: skillsOf(recorded, decisions, who),
    expectations: expectationsOf(mine),
    guesses: mine.filter(isGuess).length,
    givenAway: givenAway(mine),
    steps: mine.length,
  };
}
