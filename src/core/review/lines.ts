import { joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';
import { dateOf } from '../session/clock.ts';
import { enoughExpectations, type Expectations } from './expectations.ts';
import type { Measure } from './people.ts';
import type { Review } from './shape.ts';
import { skillNames, type Skills } from './skills.ts';

/** What each measure is called where it is told. */
export const measureNames: Readonly<Record<Measure, string>> = {
  baseline: 'baseline taken',
  evidence: 'evidence before parts',
  'one-change': 'one change at a time',
  doubtful: 'doubtful readings repeated',
  cautions: 'cautions read',
  proof: 'proof as the complaint showed',
  'put-back': 'all put back',
  minutes: 'minutes against plan',
};

const endings: Readonly<Record<string, string>> = {
  fixed: 'fixed',
  'handed-on': 'handed on',
  'given-up': 'given up',
  'not-reproduced': 'not reproduced',
  open: 'still open',
};

/** A job in one line: what it was, how it ended, and the skills that it called for. */
export function jobLine(review: Review): string {
  const { opened, vehicle, workers, complaint, closed, minutes, skills } = review;
  const by = workers.length === 0 ? '' : `, by ${joined(workers)}`;
  const head = `${dateOf(opened)}, ${vehicle}${by}, ${complaint}: ${endings[closed] ?? closed} after ${minuteWords(minutes.used)} of work`;
  return sentence(
    [head, ...skillWords(skills), givenWords(review)].filter((part) => part !== '').join('; '),
  );
}

/** Each skill that was called for: `baseline taken 2 of 3`. */
function skillWords(skills: Skills): readonly string[] {
  const { planned, taken } = skills.minutes;
  return [
    ...skillNames.flatMap((name) => {
      const { good, of } = skills[name];
      const told = measureNames[name];
      if (of === 0) return [];
      return [name === 'put-back' && good === of ? told : `${told} ${good} of ${of}`];
    }),
    ...(planned === 0
      ? []
      : [`steps took ${Math.round(taken)} minutes, ${Math.round(planned)} are planned`]),
  ];
}

/** The one figure of what choices gave away. */
const givenWords = ({ minutes: { givenAway }, withoutTree }: Review): string =>
  withoutTree
    ? ''
    : givenAway === 0
      ? 'nothing given away by choice'
      : `${minuteWords(givenAway)} given away by choice`;

/** How often somebody was right, beside how often the belief would have been; nothing where nobody said. */
export function expectationWords(who: string, one: Expectations): readonly string[] {
  const { said, right, foreseen, weighed, likely, unlikely } = one;
  if (said === 0) return [];
  const person = who === '' ? 'Whoever worked' : who;
  const told = `${person} said what was expected ${timesWords(said)}, and was right ${timesWords(right)}`;
  const odds =
    weighed === 0
      ? ''
      : `; by the odds about ${Math.round(foreseen)} of ${weighed} would have come so`;
  if (said < enoughExpectations) return [sentence(`${told}${odds}`)];
  const half = (
    words: string,
    { said: all, right: good }: Expectations['likely'],
  ): readonly string[] =>
    all === 0 ? [] : [`where the odds ${words} it, right ${good} of ${all} times`];
  const halves = [...half('favored', likely), ...half('were against', unlikely)];
  return [sentence(`${told}${odds}${halves.length === 0 ? '' : `: ${halves.join('; ')}`}`)];
}

const timesWords = (number: number): string =>
  number === 0
    ? 'never'
    : number === 1
      ? 'once'
      : number === 2
        ? 'twice'
        : `${numberWord(number)} times`;
