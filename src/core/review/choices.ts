import { percent } from '../reason/history/wording.ts';
import { clockTime } from '../session/clock.ts';
import { heading, paragraph, type Block } from '../account/block.ts';
import { joined, minuteWords, numberWord, sentence } from '../account/words/wording.ts';
import type { Decision } from './decisions.ts';
import { asGood, dear, isGuess } from './shape.ts';

/** How many choices a talk of ten minutes has room for. */
const room = 3;

/** The choices that are worth talking over, each in a paragraph, then the other steps in their order. */
export function choiceBlocks(decisions: readonly Decision[]): readonly Block[] {
  if (decisions.length === 0) return [paragraph('No step is on record.')];
  const told = worthTelling(decisions);
  const rest = decisions.filter((decision) => !told.includes(decision));
  return [
    heading('Worth talking over', 3),
    ...(told.length === 0
      ? [paragraph('No single choice cost enough to be talked over.')]
      : told.map((decision) => paragraph(choiceWords(decision)))),
    heading(told.length === 0 ? 'The steps in their order' : 'The other steps in their order', 3),
    rest.length === 0
      ? paragraph('There was no other step.')
      : { kind: 'list', items: strip(rest), numbered: false },
  ];
}

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

type Sort = { readonly one: string; readonly many: string };

const asked: Sort = {
  one: 'a step that is asked of everybody',
  many: 'steps that are asked of everybody',
};
const good: Sort = {
  one: 'a choice as good as any',
  many: 'choices as good as any',
};
const cheap: Sort = {
  one: 'a choice that cost little',
  many: 'choices that cost little',
};
const look: Sort = {
  one: 'an open look at a suspect',
  many: 'open looks at suspects',
};
const empty: Sort = {
  one: 'a check that could tell nothing any more',
  many: 'checks that could tell nothing any more',
};
const unweighed: Sort = {
  one: 'a step that cannot be weighed',
  many: 'steps that cannot be weighed',
};

function sortOf({ kind, best, lost, tellsNothing }: Decision): Sort {
  if (kind === 'asked') return asked;
  if (kind === 'look') return look;
  if (best === undefined) return unweighed;
  if (tellsNothing) return empty;
  return lost <= asGood ? good : cheap;
}

/** One line for each run of steps of one sort: when, what sort, and which. */
function strip(decisions: readonly Decision[]): readonly string[] {
  const runs: { readonly sort: Sort; readonly steps: Decision[] }[] = [];
  for (const decision of decisions) {
    const run = runs.at(-1);
    if (run?.sort === sortOf(decision)) run.steps.push(decision);
    else runs.push({ sort: sortOf(decision), steps: [decision] });
  }
  return runs.map(({ sort, steps }) => runWords(sort, steps));
}

function runWords(sort: Sort, steps: readonly Decision[]): string {
  const [first, last] = [steps[0], steps.at(-1)];
  if (first === undefined || last === undefined) throw new Error('a run without a step');
  const [from, to] = [clockTime(first.at), clockTime(last.at)];
  const when = from === to ? from : `${from} to ${to}`;
  const what = steps.length === 1 ? sort.one : `${numberWord(steps.length)} ${sort.many}`;
  return sentence(`${when}: ${what} (${joined(steps.map(({ chosen }) => `"${chosen.words}"`))})`);
}
