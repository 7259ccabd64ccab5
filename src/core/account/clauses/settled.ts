import { clockTime } from '../../session/clock.ts';
import type { Entry } from '../../session/correct.ts';
import type { PayloadOf } from '../../session/event.ts';
import type { Settling } from '../../session/kinds/shapes.ts';
import type { Finding, Story } from '../../session/story.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, asClause, readingWords, sentence, shownWords } from '../words/wording.ts';
import { plain, type Clause } from './clause.ts';

/** What the mechanic took a contradiction for, as it is told afterwards. */
export const settlingWords: Readonly<Record<Settling, string>> = {
  'misread-then': 'the first was taken for a misreading and did not count from then on',
  'misread-now': 'the last was taken for a misreading and did not count',
  'new-since':
    'the difference was put down to something new since the repair; what the check had shown before that did not count any more',
  'comes-and-goes':
    'the difference was put down to something that comes and goes; each counted by itself',
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
  // Events are numbered from 1 on; a torn or foreign line can part the two.
  const placed = story.entries[n - 1]?.event;
  const event =
    placed?.n === n ? placed : story.entries.find((entry) => entry.event.n === n)?.event;
  if (event?.kind !== 'found' && event?.kind !== 'proved') return undefined;
  const [reading, shown] = [readingWords(story, event), asClause(shownWords(story, event))];
  return `${reading === '' ? shown : `${reading} (${shown})`} at ${clockTime(event.at)}`;
}

const repairedBetween = (story: Story, earlier: number, later: number): boolean =>
  story.repairs.some(({ n }) => earlier < n && n < later);

/**
 * That the same check had shown something else before, with no repair between: what it was and when, and
 * what is open about it where it got worse and nobody said why. Empty where nothing is at odds.
 */
export function openWords(
  { story, open }: Pick<AccountContext, 'story' | 'open'>,
  finding: Finding,
): string {
  const found = open.get(finding.n);
  if (found !== undefined) {
    const between =
      found.repairsBetween > 0
        ? ', with a repair between'
        : '; nothing had been repaired between, so something came and went, or one of the two was misread';
    return ` The same check had been better before: ${shownAt(story, found.earlier.n)}${between}. Nobody said which, and the newer one counted.`;
  }
  const before = otherBefore(story, finding);
  return before === undefined
    ? ''
    : ` The same check had shown something else before, ${shownAt(story, before.n)}, and nothing had been repaired between.`;
}

/** The last finding of the same check since the last repair, if it showed something else and nobody settled it. */
function otherBefore(story: Story, finding: Finding): Finding | undefined {
  if (finding.proof || story.settled.some(({ later }) => later === finding.n)) return undefined;
  const last = story.findings.findLast(
    ({ n, check, leg }) => n < finding.n && check === finding.check && leg === finding.leg,
  );
  return last !== undefined && last.repairs === finding.repairs && last.result !== finding.result
    ? last
    : undefined;
}
