import { heading, paragraph, type Block } from '../account/block.ts';
import {
  asClause,
  causeThing,
  joined,
  minuteWords,
  numberWord,
  sentence,
} from '../account/words/wording.ts';
import { dateOf } from '../session/clock.ts';
import type { Story } from '../session/story.ts';
import type { Spread } from './comparison.ts';
import { expectationWords, jobLine, measureNames } from './lines.ts';
import {
  enoughJobs,
  peopleOf,
  type Counted,
  type Direction,
  type Person,
  type Trend,
} from './people.ts';
import type { Review } from './shape.ts';

/** A review beside the story that names its causes. */
export type Reviewed = { readonly review: Review; readonly story: Pick<Story, 'legs'> };

/** One review or several: a line each and the people first, then what to talk about, job by job. */
export function reviewBlocks(reviewed: readonly Reviewed[]): readonly Block[] {
  const reviews = reviewed.map(({ review }) => review);
  const people = peopleOf(reviews);
  return [
    {
      kind: 'title',
      text: reviews.length === 1 ? 'Review of a job' : `Review of ${reviews.length} jobs`,
    },
    { kind: 'list', items: reviews.map(jobLine), numbered: false },
    ...people.flatMap(personBlocks),
    ...reviewed.flatMap(jobBlocks),
    heading('How to read this'),
    paragraph(
      'Each step is weighed by what was known when it was taken, with the costs and rules of the advice; how it came out plays no part. What the tree asks of everybody, what the screen led to, second looks at what is doubtful and proofs are never charged, nor is what was passed over with a reason. A step is charged whole minutes, never more than it took nor than it is planned to take alone. Several things can be wrong at once, so chances do not add up to 100.',
    ),
  ];
}

function jobBlocks({ review, story }: Reviewed): readonly Block[] {
  const { vehicle, complaint, opened, talk, rest, people, expectations } = review;
  const told =
    people.length > 1 ? people : [{ who: review.workers[0] ?? review.who, expectations }];
  return [
    heading(`${vehicle}: ${complaint} (${dateOf(opened)})`),
    ...[
      comparisonWords(review, story),
      ...habitWords(review),
      ...told.flatMap((one) => expectationWords(one.who, one.expectations)),
    ]
      .filter((text) => text !== '')
      .map((text) => paragraph(text)),
    ...talk.flatMap((one): readonly Block[] => [
      heading(one.title, 3),
      paragraph(
        [one.known, one.expected, one.chosen, one.found, one.better, one.ask]
          .filter((part) => part !== '')
          .join(' '),
      ),
    ]),
    ...(talk.length === 0
      ? [
          paragraph(
            review.decisions.length === 0
              ? 'No step is on record.'
              : 'No single step calls for talking over.',
          ),
        ]
      : []),
    ...(rest === '' ? [] : [paragraph(rest)]),
  ];
}

/** Minutes on vehicles with the same fault, rounded to five, with where most of them lie. */
function comparisonWords(
  { minutes: { comparison, used } }: Review,
  story: Pick<Story, 'legs'>,
): string {
  if (comparison === undefined) return '';
  const cause = joined(comparison.causes.map((id) => causeThing(story as Story, id)));
  return sentence(
    `with this fault (${cause}) the advised way takes about ${spreadWords(comparison.advised)} and the tree's own way about ${spreadWords(comparison.own)}; this job took ${minuteWords(toFive(used))}`,
  );
}

const toFive = (minutes: number): number => Math.max(5, Math.round(minutes / 5) * 5);

const spreadWords = ({ middle, from, to }: Spread): string =>
  toFive(from) === toFive(to)
    ? minuteWords(toFive(middle))
    : `${minuteWords(toFive(middle))} (mostly ${minuteWords(toFive(from))} to ${minuteWords(toFive(to))})`;

/** What the record shows beside the choices; safety first, and nothing where there is nothing. */
function habitWords({ habits, decisions }: Review): readonly string[] {
  const { cautionsPassedOver, safeguardsPassed, leftOff, accessesTwice, contradictions, settled } =
    habits;
  const named = (things: readonly string[]): string => joined(things.map(asClause));
  return [
    ...safeguardsPassed.map((past) => sentence(`safety first: the work was ${past}`)),
    ...(cautionsPassedOver.length === 0
      ? []
      : [
          sentence(
            `nobody said to have read these cautions before their step: ${named(cautionsPassedOver)}`,
          ),
        ]),
    ...(leftOff.length === 0 ? [] : [sentence(`left open or off at the end: ${named(leftOff)}`)]),
    ...(habits.confirmedFirst || decisions.length === 0
      ? []
      : [
          'Something was opened, taken off or mended before the complaint was made to show itself.',
        ]),
    ...(accessesTwice.length === 0 ? [] : [sentence(`opened twice: ${named(accessesTwice)}`)]),
    ...(contradictions === 0
      ? []
      : [
          sentence(
            `${numberWord(contradictions)} ${contradictions === 1 ? 'finding disagrees' : 'findings disagree'} with an earlier one, and nobody said why`,
          ),
        ]),
    ...settled.map((said) => sentence(`asked about two findings that disagree: ${asClause(said)}`)),
  ];
}

/** A person over several jobs: a row a skill, a column a month, the spread of the jobs, and the direction. */
function personBlocks(person: Person): readonly Block[] {
  const { who, jobs, months, trends, expectations } = person;
  const few =
    jobs < enoughJobs ? ` Fewer than ${numberWord(enoughJobs)} jobs show no direction.` : '';
  return [
    heading(`${who}, over ${numberWord(jobs)} jobs`),
    {
      kind: 'table',
      head: ['Skill', ...shownMonths(months), 'All', 'Spread of the jobs', 'Direction'],
      rows: trends.map((trend) => [
        measureNames[trend.measure],
        ...shownMonths(months).map((month) => countedWords(trend, trend.months.get(month))),
        countedWords(trend, trend.all),
        `${shareWords(trend.least)} to ${shareWords(trend.most)} (${trend.jobs})`,
        directions[trend.direction],
      ]),
    },
    ...[...expectationWords(who, expectations), few.trim()]
      .filter((text) => text !== '')
      .map((text) => paragraph(text)),
  ];
}

/** The newest months that a table has room for. */
const shownMonths = (months: readonly string[]): readonly string[] => months.slice(-6);

const countedWords = ({ measure }: Trend, counted: Counted | undefined): string => {
  if (counted === undefined) return '';
  const { part, whole } = counted;
  return measure === 'minutes'
    ? `${Math.round(part)} for ${Math.round(whole)}`
    : `${part} of ${whole}`;
};

const shareWords = (share: number): string => `${Math.round(share * 100)} %`;

const directions: Readonly<Record<Direction, string>> = {
  rising: 'rising',
  falling: 'falling',
  unclear: 'none to be seen',
  'too few': 'too few jobs',
};
