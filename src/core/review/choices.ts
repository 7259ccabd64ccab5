import { percent } from '../reason/history/wording.ts';
import { clockTime } from '../session/clock.ts';
import { heading, paragraph, type Block } from '../account/block.ts';
import { joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';
import type { Decision } from './decisions.ts';
import { asGood, dear, isGuess } from './shape.ts';

/** How many choices a talk of ten minutes has room for. */
const room = 3;

/** The choices that are worth talking over, each in a paragraph, then the other steps together. */
export function choiceBlocks(decisions: readonly Decision[]): readonly Block[] {
  if (decisions.length === 0) return [paragraph('No step is on record.')];
  const told = worthTelling(decisions);
  const rest = decisions.filter((decision) => !told.includes(decision));
  return [
    heading('Worth talking over', 3),
    ...(told.length === 0
      ? [paragraph(nothingToTell(decisions))]
      : told.map((decision) => paragraph(choiceWords(decision)))),
    ...(rest.length === 0
      ? []
      : [
          heading(told.length === 0 ? 'The steps together' : 'The other steps together', 3),
          paragraph(restWords(rest)),
        ]),
  ];
}

const nothingToTell = (decisions: readonly Decision[]): string =>
  decisions.some(({ kind }) => kind === 'free') || !decisions.some(({ kind }) => kind === 'own')
    ? 'No single choice cost enough to be talked over.'
    : 'Nobody gave odds, so no choice can be weighed against another.';

/** The dearest choices and the guesses, in the order in which they were made. */
function worthTelling(decisions: readonly Decision[]): readonly Decision[] {
  const costly = decisions.filter(
    (decision) => decision.kind === 'free' && (decision.lost >= dear || isGuess(decision)),
  );
  const dearest = costly.toSorted((one, other) => other.lost - one.lost).slice(0, room);
  return decisions.filter((decision) => dearest.includes(decision));
}

function choiceWords(decision: Decision): string {
  const { known, chosen, chance } = decision;
  const when = clockTime(decision.at);
  const before =
    known.leader === undefined
      ? `At ${when} none of the known causes fitted what had been found`
      : `At ${when} ${known.leader.name} led with ${percent(known.chance)}, ${othersWords(known.suspects - 1)}`;
  const at = chance === undefined ? '' : `, which then stood at ${percent(chance)}`;
  const done = `The step taken was "${chosen.words}"${at}`;
  return [`${before}.`, `${done}.`, insteadWords(decision)].join(' ');
}

const othersWords = (others: number): string =>
  others <= 0
    ? 'alone'
    : `before ${numberWord(others)} ${others === 1 ? 'other suspect' : 'other suspects'}`;

function insteadWords({ best, chosen, lost, tellsNothing }: Decision): string {
  if (tellsNothing)
    return `By then it could tell nothing; its ${minuteWords(lost)} could have been kept.`;
  if (best === undefined || (best.do === chosen.do && best.id === chosen.id))
    return 'Nothing better was to be seen at that moment.';
  return `"${best.words}" would have brought the end nearer by about ${minuteWords(lost)}, over all vehicles that would have looked like this one.`;
}

type Sort = 'asked' | 'good' | 'cheap' | 'look' | 'own' | 'empty' | 'unweighed';

/** What is said of so many of the other steps; only a step that bought nothing is called by its name. */
const words: Readonly<Record<Sort, string>> = {
  asked: 'asked of everybody',
  good: 'as good as any other',
  cheap: 'a little dearer than the best',
  look: 'an open look at a suspect',
  own: 'chosen without a tree, with no odds to weigh them by',
  empty: 'past telling anything',
  unweighed: 'not to be weighed',
};

const sorts = Object.keys(words) as readonly Sort[];

function sortOf({ kind, best, lost, tellsNothing }: Decision): Sort {
  if (kind === 'asked') return 'asked';
  if (kind === 'look' || kind === 'own') return kind;
  if (best === undefined) return 'unweighed';
  if (tellsNothing) return 'empty';
  return lost <= asGood ? 'good' : 'cheap';
}

/** The other steps together: how many were of which sort. Nobody has to go through a job step by step. */
function restWords(decisions: readonly Decision[]): string {
  const parts = sorts.flatMap((sort) => {
    const steps = decisions.filter((decision) => sortOf(decision) === sort);
    if (steps.length === 0) return [];
    const named =
      sort === 'empty' ? ` (${joined(steps.map(({ chosen }) => `"${chosen.words}"`))})` : '';
    return [
      `${numberWord(steps.length)} ${steps.length === 1 ? 'was' : 'were'} ${words[sort]}${named}`,
    ];
  });
  return sentence(joined(parts));
}
