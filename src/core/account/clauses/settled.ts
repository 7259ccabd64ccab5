import { clockTime } from '../../session/clock.ts';
import type { Contradiction } from '../../session/contradiction.ts';
import type { Entry } from '../../session/correct.ts';
import type { PayloadOf } from '../../session/event.ts';
import type { Settling } from '../../session/kinds/shapes.ts';
import type { Story } from '../../session/story.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, asClause, readingWords, sentence, shownWords } from '../words/wording.ts';
import { plain, type Clause } from './clause.ts';

/** What the mechanic took a contradiction for, as it is told afterwards. */
export const settlingWords: Readonly<Record<Settling, string>> = {
  'misread-then': 'the first was taken for a misreading and did not count from then on',
  'misread-now': 'the last was taken for a misreading and did not count',
  'new-since':
    'it was put down to something new since the repair; what the check had shown before that did not count any more',
  'comes-and-goes': 'it was put down to something that comes and goes; each counted by itself',
};

/** Two findings that contradict one another, and what the mechanic said of them. */
export function settledClause(
  { story }: AccountContext,
  { event }: Entry,
  { as, check, earlier, later }: PayloadOf<'settled'>,
): Omit<Clause, 'n' | 'at'> {
  const leg = story.legs.findLastIndex(({ since }) => since < event.n);
  const [first, last] = [earlier, later].map((n) => shownAt(story, n));
  const between = repairedBetween(story, earlier, later) ? ', with a repair between' : '';
  const found =
    first === undefined || last === undefined ? '' : `: first ${first}, then ${last}${between}`;
  const words = sentence(
    `what was found of ${askedThing(story, check, leg < 0 ? 0 : leg)} did not agree${found}`,
  );
  const text = `${words} ${sentence(settlingWords[as])}`;
  return {
    ...plain(text),
    phrase: ({ when }) =>
      when === '' ? text : `${when} ${asClause(words)}. ${sentence(settlingWords[as])}`,
  };
}

/** A finding as it was first written, withdrawn or not: `12.6 V (full) at 10:42`. */
function shownAt(story: Story, n: number): string | undefined {
  const event = story.entries.find((entry) => entry.event.n === n)?.event;
  if (event?.kind !== 'found' && event?.kind !== 'proved') return undefined;
  const [reading, shown] = [readingWords(story, event), asClause(shownWords(story, event))];
  return `${reading === '' ? shown : `${reading} (${shown})`} at ${clockTime(event.at)}`;
}

const repairedBetween = (story: Story, earlier: number, later: number): boolean =>
  story.repairs.some(({ n }) => earlier < n && n < later);

/** That a finding contradicts the one before it, and nobody has said what that is; else empty. */
export function openWords({ story }: AccountContext, found: Contradiction | undefined): string {
  if (found === undefined) return '';
  const between = found.repairsBetween > 0 ? ', with a repair between' : '';
  return ` That is worse than what was found before (${shownAt(story, found.earlier.n)})${between}. Whether one of them was misread was left open; until then the newer one counted.`;
}
