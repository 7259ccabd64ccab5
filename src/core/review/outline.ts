import { dateOf } from '../session/clock.ts';
import { heading, paragraph, type Block } from '../account/block.ts';
import { choiceBlocks } from './choices.ts';
import { usualVehicles, type Luck, type Review } from './shape.ts';
import { trendBlocks } from './trend.ts';
import { joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';

/** One review or several as blocks; several of one person end in their trend. */
export function reviewBlocks(reviews: readonly Review[]): readonly Block[] {
  return [
    { kind: 'title', text: reviews.length === 1 ? 'Review of a session' : 'Review of sessions' },
    ...reviews.flatMap(oneReview),
    ...trendBlocks(reviews),
    heading('How to read this'),
    paragraph(
      `A choice is weighed by what was known when it was made; how it came out plays no part in its price. Minutes given away are expected ones: what the choice cost on average over all the vehicles that would have looked like this one. What the tree asks of everybody (the complaint, the baseline, retests and proofs) is not charged. No step is charged more than its own minutes, since what was best before it can still be done after it. The advised figure is what the advice itself gives, which looks some steps ahead and errs high; that of the order in the tree is a mean over ${usualVehicles} made-up vehicles. Not measured here: whether a result was foretold, whether a probe was on the post, and how well a reading was taken.`,
    ),
  ];
}

function oneReview(review: Review): readonly Block[] {
  const by = review.who === '' ? '' : `, by ${review.who}`;
  return [
    heading(`${review.vehicle}: ${review.complaint} (${dateOf(review.opened)}${by})`),
    paragraph(minutesWords(review)),
    paragraph(countsWords(review)),
    ...doubtBlocks(review),
    ...review.luck.map((luck) => paragraph(luckWords(luck))),
    heading('What went well', 3),
    review.strengths.length === 0
      ? paragraph('Nothing that could be counted.')
      : { kind: 'list', items: review.strengths, numbered: false },
    heading('Two things to practise', 3),
    { kind: 'list', items: review.practise, numbered: true },
    ...choiceBlocks(review.decisions),
  ];
}

function minutesWords({ minutes, closed, withoutTree }: Review): string {
  const { used, advised, ownOrder, lost } = minutes;
  const order = withoutTree
    ? ' No tree was about the complaint: there is no order to hold it against.'
    : ownOrder === undefined
      ? " The tree's own order could not be worked out."
      : ` By the tree's own order it takes about ${minuteWords(ownOrder)} on average.`;
  if (advised === undefined) return `${sentence(`${minuteWords(used)} were used`)}${order}`;
  const head = sentence(
    `${minuteWords(used)} were used; from the same start the advised order takes about ${minuteWords(advised)} to a proven repair, on average over all that it could be`,
  );
  if (closed !== 'fixed')
    return `${head}${order} Choices gave away about ${minuteWords(lost)}; the job ended without a proven repair, so the minutes used cannot be held against these.`;
  const rest = used - advised - lost;
  const luck =
    Math.abs(rest) < 1
      ? 'With what the choices gave away that is what was to be expected.'
      : rest < 0
        ? `Choices gave away about ${minuteWords(lost)}; the work still ended ${minuteWords(-rest)} sooner than such choices end on average: the cause was one of the quicker ones, or the hands were.`
        : `Choices gave away about ${minuteWords(lost)}; the other ${minuteWords(rest)} over what was to be expected are luck and pace.`;
  return `${head}${order} ${luck}`;
}

function countsWords({ decisions, guesses, toldNothing, habits }: Review): string {
  const freely = decisions.filter(({ kind }) => kind === 'free' || kind === 'own').length;
  const counted = [
    [guesses, 'repair on a guess', 'repairs on a guess'],
    [toldNothing, 'check that could tell nothing', 'checks that could tell nothing'],
    [habits.repeats, 'repeat with nothing changed between', 'repeats with nothing changed between'],
    [
      habits.cautionsPassedOver.length + habits.safeguardsPassed.length,
      'caution passed over',
      'cautions passed over',
    ],
    [habits.unprovenRepairs, 'repair without its proof', 'repairs without their proof'],
    [habits.leftOff.length, 'thing left open or off', 'things left open or off'],
    [habits.accessesTwice.length, 'access opened twice', 'accesses opened twice'],
    [habits.changesAtOnce, 'repair on top of an unproved one', 'repairs on top of unproved ones'],
    [habits.contradictions, 'contradiction left standing', 'contradictions left standing'],
    [habits.settled.length, 'contradiction answered', 'contradictions answered'],
    [habits.corrections, 'entry put right', 'entries put right'],
  ] as const;
  const found = counted
    .filter(([number]) => number > 0)
    .map(([number, one, many]) => `${numberWord(number)} ${number === 1 ? one : many}`);
  const head = `${numberWord(decisions.length)} ${decisions.length === 1 ? 'step' : 'steps'}, ${numberWord(freely)} of them freely chosen`;
  return found.length === 0
    ? `${sentence(head)} Nothing in them has to be counted against anybody.`
    : `${sentence(head)} ${sentence(`Counted: ${joined(found)}`)}`;
}

/** The findings that contradicted one another, what was said of each, and whether they were repeated. */
function doubtBlocks({
  habits: { doubtful, doubtfulRepeated, settled },
}: Review): readonly Block[] {
  if (doubtful === 0) return [];
  const again =
    doubtfulRepeated === 0
      ? 'not repeated'
      : doubtfulRepeated === doubtful
        ? 'repeated'
        : `repeated ${numberWord(doubtfulRepeated)} of ${numberWord(doubtful)} times`;
  const text = sentence(
    `${numberWord(doubtful)} ${doubtful === 1 ? 'doubtful finding was' : 'doubtful findings were'} ${again} (worse than the one before of the same thing)`,
  );
  return [paragraph([text, ...settled.map(sentence)].join(' '))];
}

const luckKinds: Readonly<Record<Luck['kind'], string>> = {
  'lucky guess': 'Luck, not skill: it cured, though it was a guess when it was made',
  'sound choice that failed':
    'Skill, and bad luck: it did not cure, though it was likely when it was made',
  'slower check that settled it':
    'Partly luck: it settled the matter, though another check would have done so sooner on average',
};

const luckWords = ({ kind, words }: Luck): string => sentence(`${luckKinds[kind]} ("${words}")`);
