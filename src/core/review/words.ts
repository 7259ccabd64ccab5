import type { Decision } from './decisions.ts';
import { asGood, dear, isGuess, type Review } from './shape.ts';
import { percent } from '../reason/history/wording.ts';
import { asClause, joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';

export type Reviewed = Omit<Review, 'strengths' | 'practise'>;

const free = ({ decisions }: Reviewed): readonly Decision[] =>
  decisions.filter(({ kind }) => kind === 'free');

const times = (number: number): string =>
  number === 1 ? 'once' : number === 2 ? 'twice' : `${numberWord(number)} times`;

/** What went well, at most three things, each with its evidence. */
export function strengths(review: Reviewed): readonly string[] {
  const { habits, guesses } = review;
  const choices = free(review);
  const good = choices.filter(({ lost }) => lost <= asGood).length;
  const repaired = review.decisions.some(({ chosen }) => chosen.do === 'repair');
  const weighed = review.decisions.some(({ chance }) => chance !== undefined);
  const evidence: readonly (readonly [holds: boolean, text: string])[] = [
    [habits.confirmedFirst, 'The complaint was made to show itself before anything was touched.'],
    [
      repaired && habits.unprovenRepairs === 0,
      "Every repair was put to the proof by the complaint's own test.",
    ],
    [
      choices.length >= 3 && good * 2 >= choices.length,
      sentence(
        `${numberWord(good)} of ${numberWord(choices.length)} free choices were as good as the best one`,
      ),
    ],
    [weighed && guesses === 0, 'Nothing was replaced on a guess.'],
    [
      habits.baselineAsked > 0 && habits.baselineTaken === habits.baselineAsked,
      'All the baseline readings were taken before the search began.',
    ],
    [
      habits.corrections > 0,
      `A slip in the record was put right ${times(habits.corrections)}, and left to be seen.`,
    ],
    [
      habits.skipped > 0 && choices.length > 0,
      'What was passed over stands in the record with its reason.',
    ],
  ];
  return evidence
    .filter(([holds]) => holds)
    .map(([, text]) => text)
    .slice(0, 3);
}

type Fault = { readonly weight: number; readonly text: string };

/** A fault, where it was committed. */
const faultIf = (committed: boolean, weight: number, text: string): readonly Fault[] =>
  committed ? [{ weight, text }] : [];

/** The two things that cost most, in minutes or in safety. */
export function practice(review: Reviewed): readonly string[] {
  const faults = [...safetyFaults(review), ...choiceFaults(review), ...orderFaults(review)];
  const [one, two] = faults.toSorted((first, second) => second.weight - first.weight);
  return [
    one?.text ?? 'Say before each check what it should show; then a surprise is seen as one.',
    two?.text ??
      (one === undefined
        ? 'Keep the record as it is here, and time the next job against this one.'
        : 'Say before each check what it should show; then a surprise is seen as one.'),
  ];
}

/** Weights of what is not measured in minutes, on the scale of minutes: our own judgment. */
const weights = {
  safety: 10_000,
  proof: 60,
  changes: 45,
  confirm: 40,
  left: 50,
  contradiction: 25,
};

function safetyFaults({
  habits: { cautionsPassedOver, safeguardsPassed, leftOff },
}: Reviewed): readonly Fault[] {
  return [
    ...safeguardsPassed.slice(0, 1).map((past) => ({
      weight: weights.safety + 1,
      text: `Make first what can forbid a step: the work was ${past}`,
    })),
    ...faultIf(
      cautionsPassedOver.length > 0,
      weights.safety,
      `Read the cautions before the step, every time: ${theyWere(cautionsPassedOver)} passed over.`,
    ),
    ...faultIf(
      leftOff.length > 0,
      weights.left,
      `Go round the vehicle before the job is closed. Left open or off: ${joined(leftOff.map(asClause))}.`,
    ),
  ];
}

function choiceFaults(review: Reviewed): readonly Fault[] {
  const guessed = review.decisions.filter(isGuess);
  const checks = free(review).filter(
    ({ chosen, tellsNothing }) => chosen.do === 'check' && !tellsNothing,
  );
  const lost = sum(checks);
  const vain = review.decisions.filter(({ tellsNothing }) => tellsNothing);
  return [
    ...guessed.slice(0, 1).map((guess) => ({
      weight: sum(guessed) + weights.proof,
      text: `Look before replacing: ${quoted(guess)} was done at ${percent(guess.chance)}, and gave away about ${minuteWords(sum(guessed))} against ${bestWords(guess)}.`,
    })),
    ...(lost < dear ? [] : checks.toSorted((one, other) => other.lost - one.lost))
      .slice(0, 1)
      .map((dearest) => ({
        weight: lost,
        text: `Ask which check parts the suspects soonest: other orders would have saved about ${minuteWords(lost)}, most of it where ${quoted(dearest)} was done before ${bestWords(dearest)}.`,
      })),
    ...vain.slice(0, 1).map((first) => ({
      weight: sum(vain) + 5,
      text: `Before a check, ask what it can still tell: ${quoted(first)} could tell nothing when it was done.`,
    })),
  ];
}

function orderFaults({ habits, decisions }: Reviewed): readonly Fault[] {
  const early = decisions.filter(({ openedEarly }) => openedEarly);
  return [
    ...faultIf(
      habits.unprovenRepairs > 0,
      weights.proof,
      `Prove every repair by the complaint's own test: ${times(habits.unprovenRepairs)} it was left out.`,
    ),
    ...faultIf(
      habits.changesAtOnce > 0,
      weights.changes,
      'One change at a time: a second repair was made before the first had been proved, so nobody knows which one did it.',
    ),
    ...faultIf(
      !habits.confirmedFirst,
      weights.confirm,
      'Make the complaint show itself first: without it a proof afterwards proves little.',
    ),
    ...faultIf(
      habits.contradictions > 0,
      weights.contradiction,
      'A check that showed better before and worse now needs an answer: it was left standing.',
    ),
    ...early.slice(0, 1).map((first) => ({
      weight: sum(early),
      text: `Look from outside first: something was opened for ${quoted(first)} while a quicker check needed no opening.`,
    })),
    ...faultIf(
      habits.accessesTwice.length > 0,
      15 * habits.accessesTwice.length,
      `Do all that needs one opening while it is open: ${theyWere(habits.accessesTwice)} opened twice.`,
    ),
  ];
}

/** `the fuel tank and the hood were`. */
const theyWere = (names: readonly string[]): string =>
  `${joined(names.map(asClause))} ${names.length === 1 ? 'was' : 'were'}`;

const sum = (decisions: readonly Decision[]): number =>
  decisions.reduce((all, { lost }) => all + lost, 0);

const quoted = ({ chosen }: Decision): string => `"${chosen.words}"`;

const bestWords = ({ best }: Decision): string => `"${best?.words ?? 'the best step then'}"`;
