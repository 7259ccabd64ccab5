import { oneIn } from '../account/clauses/grammar.ts';
import {
  askedThing,
  asClause,
  causeIn,
  joined,
  minuteWords,
  sentence,
  shownWords,
} from '../account/words/wording.ts';
import type { ChanceMap } from '../reason/history/belief-history.ts';
import { percent } from '../reason/history/wording.ts';
import { clockTime } from '../session/clock.ts';
import { expectedLabel, isAsExpected } from '../session/expecting/expected.ts';
import type { Story } from '../session/story.ts';
import { unlisted } from '../tree/model.ts';
import { isOwn } from '../tree/own/bare.ts';
import { isLook } from '../tree/looked.ts';
import { isGuess, type Decision } from './decision.ts';

const nameOf = (story: Story, { leg }: Decision, cause: string): string =>
  cause === unlisted ? 'something not on the list' : causeIn(story, cause, leg);

/** A step as a thing: `the spark at a plug lead`, `the repair of the fuel pump`. */
export const stepThing = (story: Story, decision: Decision): string =>
  thingOf(story, decision, decision.step);

function thingOf(story: Story, decision: Decision, { do: kind, id }: Decision['step']): string {
  if (kind === 'repair') return `the repair of ${nameOf(story, decision, id)}`;
  const thing = askedThing(story, id, decision.leg);
  return isLook(id) ? `an open look at ${thing}` : thing;
}

const sorted = (chances: ChanceMap): readonly (readonly [string, number])[] =>
  [...chances].toSorted(([, one], [, other]) => other - one);

/** Who was suspected before a step, the first three by name. */
export function knownWords(story: Story, decision: Decision): string {
  const when = clockTime(decision.at);
  const { before } = decision;
  if (before === undefined)
    return isOwn(story.legs[decision.leg]?.tree ?? { id: '' })
      ? ''
      : `At ${when} nothing explained all that had been found.`;
  const [lead, ...next] = sorted(before).filter(([, chance]) => chance >= 0.01);
  if (lead === undefined) return `At ${when} no suspect was left.`;
  const named = ([id, chance]: readonly [string, number]): string =>
    `${nameOf(story, decision, id)} (${percent(chance)})`;
  const then = next.slice(0, 2).map(named);
  const behind = then.length === 0 ? ', alone' : `, then ${joined(then)}`;
  return sentence(`at ${when} ${named(lead)} came first${behind}`);
}

/** What was expected: by whoever said it, and by the odds. */
export function expectedWords(story: Story, decision: Decision): string {
  const { step, expected, chance } = decision;
  if (step.do === 'repair')
    return chance === undefined
      ? ''
      : sentence(`it stood at ${percent(chance)} when it was mended`);
  const thing = expectedThing(story, decision);
  if (thing === '') return '';
  return sentence(expected === undefined ? `the likeliest was ${thing}` : thing);
}

/** A result that was expected, by whom, and how many vehicles show it; the likeliest where nobody said. */
export function expectedThing(story: Story, decision: Decision): string {
  const { step, expected, foreseen, who, leg } = decision;
  const result = expected ?? sorted(foreseen)[0]?.[0];
  if (result === undefined) return '';
  const label = asClause(expectedLabel({ legs: story.legs.slice(leg, leg + 1) }, step.id, result));
  const likely = foreseen.get(result);
  const odds = likely === undefined ? '' : ` (by the odds ${vehiclesWords(likely)})`;
  return `${expected === undefined ? '' : `${personOf(who)} expected `}"${label}"${odds}`;
}

const personOf = (who: string | undefined): string =>
  who === undefined || who.trim() === '' ? 'who worked' : who.trim();

/** A chance as so many vehicles: `nearly every vehicle`, `about one vehicle in five`. */
function vehiclesWords(chance: number): string {
  if (chance > 0.95) return 'nearly every vehicle';
  if (chance > 0.8) return 'most vehicles';
  return chance > 0.6 ? 'about two vehicles in three' : oneIn(chance);
}

/** How a step came to be taken. */
export const howTaken = ({ kind }: Decision): string => how[kind];

const how: Readonly<Record<Decision['kind'], string>> = {
  asked: 'asked of everybody',
  proof: 'the proof',
  verified: 'looked at again',
  followed: 'the step on screen',
  look: 'looked before it was mended',
  own: 'chosen without odds',
  unsure: 'it could not be told',
  passed: 'passed over',
  chosen: "the person's own choice",
};

export function chosenWords(story: Story, decision: Decision): string {
  const { kind, who } = decision;
  const several = new Set(story.workers.map((one) => one.who)).size > 1;
  const by = several && who !== undefined && who !== '' ? `, by ${who.trim()}` : '';
  const took = tookWords(decision);
  return sentence(
    `the step was ${stepThing(story, decision)}${by}: ${how[kind]}${took === '' ? '' : `; ${took}`}`,
  );
}

/** `it took 4 minutes, 3 are planned`; nothing where the clock or the plan says nothing. */
export function tookWords({ kind, taken, planned }: Decision): string {
  if (taken < 0.5 || kind === 'passed') return '';
  const plan = planned === undefined || planned < 0.5 ? '' : `, ${Math.round(planned)} are planned`;
  return `it took ${minuteWords(taken)}${plan}`;
}

/** What it showed, or whether the repair cured, and who rose and fell by it. */
export function foundWords(story: Story, decision: Decision): string {
  const { step, n, reason } = decision;
  const moved = movedWords(story, decision);
  if (step.do === 'repair') {
    const next = story.repairs.find((repair) => repair.n > n)?.n ?? Infinity;
    const proof = story.proofs.find((one) => one.n > n && one.n < next);
    if (proof === undefined) return 'It was never put to the proof.';
    return proof.good ? 'The complaint was gone after it.' : 'The complaint was there still.';
  }
  if (reason !== undefined) return sentence(`the reason given: "${reason.trim()}"`);
  const shown = foundThing(story, decision);
  return shown === '' ? '' : `${sentence(`it showed ${shown}`)}${moved === '' ? '' : ` ${moved}`}`;
}

/** What a check showed, and whether that was expected. */
export function foundThing(story: Story, { finding, expected }: Decision): string {
  if (finding === undefined) return '';
  const as = isAsExpected(finding, { result: expected ?? '' }) ? 'as expected' : 'not as expected';
  return `"${asClause(shownWords(story, finding))}"${expected === undefined ? '' : `, ${as}`}`;
}

/** A shift of this much is worth a word. */
const worthTelling = 0.1;

/** Who rose most, and who fell most. */
function movedWords(story: Story, decision: Decision): string {
  const { before, after } = decision;
  if (before === undefined || after === undefined) return '';
  const shifts = [...after]
    .map(([cause, to]) => ({ cause, from: before.get(cause) ?? 0, to }))
    .toSorted((one, other) => other.to - other.from - (one.to - one.from));
  const told = [shifts[0], shifts.at(-1)].flatMap((shift, place) => {
    if (shift === undefined) return [];
    const rose = place === 0 ? shift.to - shift.from : shift.from - shift.to;
    if (rose < worthTelling) return [];
    const [from, to] = [percent(shift.from), percent(shift.to)];
    return [
      `${nameOf(story, decision, shift.cause)} ${place === 0 ? 'rose' : 'fell'} from ${from} to ${to}`,
    ];
  });
  return told.length === 0 ? 'That moved no suspect by much.' : sentence(joined(told));
}

/** What would have been better and why, or that nothing would. */
export function betterWords(story: Story, decision: Decision): string {
  const { better, charged, tellsNothing, kind } = decision;
  if (tellsNothing) return sentence(`by then it could tell nothing${chargedWords(charged)}`);
  if (better === undefined) return nothingBetter[kind];
  const { step, because } = better;
  const guess = isGuess(decision) ? ' before anything is mended on a guess' : '';
  return sentence(
    `better then: ${thingOf(story, decision, step)} (${minuteWords(step.minutes)})${guess}, since ${because}${chargedWords(charged)}`,
  );
}

/** The better step by its name and minutes alone. */
export function betterThing(story: Story, decision: Decision): string {
  const { better, tellsNothing } = decision;
  if (tellsNothing) return 'to leave it: it could tell nothing by then';
  if (better === undefined) return '';
  return `${thingOf(story, decision, better.step)}, ${minuteWords(better.step.minutes)}`;
}

const chargedWords = (charged: number): string =>
  charged === 0 ? '' : `. Given away: about ${minuteWords(charged)}`;

const nothingBetter: Readonly<Record<Decision['kind'], string>> = {
  asked: '',
  proof: '',
  verified: 'Looking twice at what is doubtful is good work, whatever it shows.',
  followed: 'It was what the screen led to: nobody is charged for that.',
  look: 'A look before the work is good work, whatever it shows.',
  own: 'Nobody gave odds, so it cannot be weighed.',
  unsure: 'Saying so is right: a guessed reading would have moved the suspects.',
  passed: 'Nobody is charged for what cannot be had.',
  chosen: 'No step was better then: a free choice, and a good one.',
};
