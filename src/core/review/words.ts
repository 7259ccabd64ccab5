import type { Decision } from './decisions.ts';
import { isGuess, type Review } from './shape.ts';
import { percent } from '../reason/history/wording.ts';
import { asClause, joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';

export type Reviewed = Omit<Review, 'strengths' | 'practise'>;

const free = ({ decisions }: Reviewed): readonly Decision[] =>
  decisions.filter(({ kind }) => kind === 'free');

/** A choice this close to the best, in minutes, is as good as it. */
const asGood = 1;

const times = (number: number): string =>
  number === 1 ? 'once' : number === 2 ? 'twice' : `${numberWord(number)} times`;

/** What went well, at most three things, each with its evidence. */
export function strengths(review: Reviewed): readonly string[] {
  const { habits, guesses } = review;
  const choices = free(review);
  const good = choices.filter(({ lost }) => lost <= asGood).length;
  const proven = review.decisions.some(({ chance }) => chance !== undefined);
  const evidence: readonly (readonly [holds: boolean, text: string])[] = [
    [habits.confirmedFirst, 'The complaint was made to show itself before anything was touched.'],
    [
      proven && habits.unprovenRepairs === 0,
      "Every repair was put to the proof by the complaint's own test.",
    ],
    [
      choices.length >= 3 && good * 2 >= choices.length,
      sentence(
        `${numberWord(good)} of ${numberWord(choices.length)} free choices were as good as the best one`,
      ),
    ],
    [proven && guesses === 0, 'Nothing was replaced on a guess.'],
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

function safetyFaults({ habits }: Reviewed): readonly Fault[] {
  return [
    ...(habits.cautionsPassedOver.length === 0
      ? []
      : [
          {
            weight: weights.safety,
            text: `Read the cautions before the step, every time: ${joined(habits.cautionsPassedOver.map(asClause))} ${habits.cautionsPassedOver.length === 1 ? 'was' : 'were'} passed over.`,
          },
        ]),
    ...(habits.leftOff.length === 0
      ? []
      : [
          {
            weight: weights.left,
            text: `Go round the vehicle before the job is closed. Left open or off: ${joined(habits.leftOff.map(asClause))}.`,
          },
        ]),
  ];
}

function choiceFaults(review: Reviewed): readonly Fault[] {
  const guessed = review.decisions.filter(isGuess);
  const [guess] = guessed;
  const checks = free(review).filter(
    ({ chosen, tellsNothing }) => chosen.do === 'check' && !tellsNothing,
  );
  const dearest = checks.toSorted((one, other) => other.lost - one.lost)[0];
  const lost = sum(checks);
  const nothing = review.decisions.filter(({ tellsNothing }) => tellsNothing);
  const [vain] = nothing;
  return [
    ...(guess === undefined
      ? []
      : [
          {
            weight: sum(guessed) + weights.proof,
            text: `Look before replacing: ${quoted(guess.chosen.words)} was done at ${percent(guess.chance)}, and gave away about ${minuteWords(sum(guessed))} against ${bestWords(guess)}.`,
          },
        ]),
    ...(dearest === undefined || lost < dear
      ? []
      : [
          {
            weight: lost,
            text: `Ask which check parts the suspects soonest: other orders would have saved about ${minuteWords(lost)}, most of it where ${quoted(dearest.chosen.words)} was done before ${bestWords(dearest)}.`,
          },
        ]),
    ...(vain === undefined
      ? []
      : [
          {
            weight: sum(nothing) + 5,
            text: `Before a check, ask what it can still tell: ${quoted(vain.chosen.words)} could tell nothing when it was done.`,
          },
        ]),
  ];
}

function orderFaults({ habits, decisions }: Reviewed): readonly Fault[] {
  const early = decisions.filter(({ openedEarly }) => openedEarly);
  const [first] = early;
  return [
    ...(habits.unprovenRepairs === 0
      ? []
      : [
          {
            weight: weights.proof,
            text: `Prove every repair by the complaint's own test: ${times(habits.unprovenRepairs)} it was left out.`,
          },
        ]),
    ...(habits.changesAtOnce === 0
      ? []
      : [
          {
            weight: weights.changes,
            text: 'One change at a time: a second repair was made before the first had been proved, so nobody knows which one did it.',
          },
        ]),
    ...(habits.confirmedFirst
      ? []
      : [
          {
            weight: weights.confirm,
            text: 'Make the complaint show itself first: without it a proof afterwards proves little.',
          },
        ]),
    ...(habits.contradictions === 0
      ? []
      : [
          {
            weight: weights.contradiction,
            text: 'A check that showed better before and worse now needs an answer: it was left standing.',
          },
        ]),
    ...(first === undefined
      ? []
      : [
          {
            weight: sum(early),
            text: `Look from outside first: something was opened for ${quoted(first.chosen.words)} while a quicker check needed no opening.`,
          },
        ]),
    ...(habits.accessesTwice.length === 0
      ? []
      : [
          {
            weight: 15 * habits.accessesTwice.length,
            text: `Do all that needs one opening while it is open: ${joined(habits.accessesTwice.map(asClause))} ${habits.accessesTwice.length === 1 ? 'was' : 'were'} opened twice.`,
          },
        ]),
  ];
}

/** Minutes over a whole session that are worth a word. */
const dear = 5;

const sum = (decisions: readonly Decision[]): number =>
  decisions.reduce((all, { lost }) => all + lost, 0);

const quoted = (words: string): string => `"${words}"`;

const bestWords = (decision: Decision | undefined): string =>
  quoted(decision?.best?.words ?? 'the best step then');
