import { percent } from '../../reason/history/wording.ts';
import { settledFrom } from '../../reason/advice/explain.ts';
import type { Entry } from '../../session/correct.ts';
import type { PayloadOf } from '../../session/event.ts';
import type { Story } from '../../session/story.ts';
import { correctionWords } from './finding-words.ts';
import { plain, type Clause } from './clause.ts';
import { subject as subjectOf } from './grammar.ts';
import type { AccountContext } from '../context.ts';
import { causeIn, asClause, quoted, minuteWords, sentence } from '../words/wording.ts';

type Made = Omit<Clause, 'n' | 'at'>;

/** How likely a cause was by all that had been found before an event. */
export function chanceBefore(
  { history }: AccountContext,
  n: number,
  cause: string,
): number | undefined {
  const last = history.findLast((step) => step.n < n);
  return last === undefined ? history[0]?.before?.get(cause) : last.after?.get(cause);
}

/** Under this a repair is a guess, whatever comes of it. */
export const guessUnder = 0.5;

/** Whether a cause stood named before an event, with no repair since. */
const wasNamed = (story: Story, n: number, cause: string): boolean =>
  story.condemned.some(
    (one) => one.cause === cause && one.n < n && !story.repairs.some((r) => r.n > one.n && r.n < n),
  );

export function condemnedClause(
  context: AccountContext,
  n: number,
  { cause, found }: PayloadOf<'condemned'>,
): Made {
  const { story, who } = context;
  // Named once more only to go past a safeguard: that is told, the naming was.
  if (wasNamed(story, n, cause))
    return plain(`${who} named the same cause once more`, { kind: 'aside' });
  const chance = chanceBefore(context, n, cause);
  const name = causeIn(story, cause, legAt(story, n));
  const as = found === undefined ? '' : ` ("${quoted(found)}")`;
  return plain(`${who} named the cause${sureWords(chance)}: ${name}${as}`);
}

/** The leg in which an event stands. */
const legAt = ({ legs }: Story, n: number): number => legs.findLastIndex(({ since }) => since < n);

/** How sure a cause was when it was named or mended; nothing where it counted as found. */
function sureWords(chance: number | undefined): string {
  if (chance === undefined || chance >= settledFrom) return '';
  return chance >= guessUnder
    ? `, likely and not sure (${percent(chance)})`
    : `, on a guess (${percent(chance)})`;
}

/** A repair, after everything that was taken off for it. */
export function repairedClause(
  context: AccountContext,
  entry: Entry,
  said: PayloadOf<'repaired'>,
): Made {
  const { story } = context;
  const { n } = entry.event;
  const named = wasNamed(story, n, said.cause);
  const name = causeIn(story, said.cause, legAt(story, n));
  const sure = named ? '' : sureWords(chanceBefore(context, n, said.cause));
  const what = said.did === undefined ? '' : `: ${asClause(said.did)}`;
  const minutes = said.minutes === undefined ? '' : ` (${minuteWords(said.minutes)})`;
  const subject = named && said.did !== undefined ? 'the repair was done' : mended(name, sure);
  return {
    kind: 'repair',
    begins: true,
    phrase: ({ when }) =>
      `${sentence(`${when === '' ? 'then' : when} ${subject}${what}${minutes}`)}${correctionWords(context, entry)}`,
  };
}

/** `the fuel pump was mended, on a guess (13 %)`. */
const mended = (name: string, sure: string): string =>
  `${subjectOf([name])} mended${sure === '' ? '' : `${sure}, before any cause was named`}`;
