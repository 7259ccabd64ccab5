import { percent } from '../../reason/history/wording.ts';
import { settledFrom } from '../../reason/advice/explain.ts';
import type { Entry } from '../../session/correct.ts';
import type { PayloadOf } from '../../session/event.ts';
import type { Story } from '../../session/story.ts';
import { correctionWords } from './finding-words.ts';
import { plain, type Clause } from './clause.ts';
import type { AccountContext } from '../context.ts';
import { causeThing, asClause, minuteWords, sentence } from '../words/wording.ts';

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
  const as = found === undefined ? '' : sentence(`What was found: ${asClause(found)}`);
  if (wasJustTold(context, n, cause) && (chance ?? 0) >= settledFrom)
    return plain(`with that, ${who} named it as the cause${as === '' ? '' : `. ${as}`}`);
  return plain(
    [`${who} named the cause: ${causeThing(story, cause)}.`, sureWords(chance), as]
      .filter((part) => part !== '')
      .join(' '),
  );
}

/** Whether the finding just before an event pointed at this cause, and said so. */
function wasJustTold(
  { story, history, impactAt }: AccountContext,
  n: number,
  cause: string,
): boolean {
  const last = history.findLast((step) => step.n < n);
  if (last?.kind !== 'finding' || wasPutDown(story, last.n, n)) return false;
  const impact = impactAt(last.n);
  return impact?.leader?.cause === cause && (impact.settles || impact.up?.cause === cause);
}

/** Whether the work was put down between two events, or gone on with by somebody else. */
const wasPutDown = ({ entries }: Story, after: number, before: number): boolean =>
  entries.some(
    ({ event: { n, kind } }) =>
      n > after && n < before && (kind === 'paused' || kind === 'worker' || kind === 'resumed'),
  );

function sureWords(chance: number | undefined): string {
  if (chance === undefined) return '';
  if (chance >= settledFrom) return `It then stood at ${percent(chance)}.`;
  return chance >= guessUnder
    ? `It then stood at ${percent(chance)}: likely, and not sure.`
    : `It then stood at ${percent(chance)}: that was a guess.`;
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
  const name = causeThing(story, said.cause);
  const sure = named ? '' : sureWords(chanceBefore(context, n, said.cause));
  const what = said.did === undefined ? name : asClause(said.did);
  const subject =
    named || said.did === undefined
      ? 'the repair was done'
      : `one suspect was mended before any cause was named (${name})`;
  const minutes =
    said.minutes === undefined ? '' : ` It took ${minuteWords(said.minutes)} of work.`;
  return {
    kind: 'repair',
    begins: true,
    cautions: [],
    phrase: ({ when }) =>
      [
        sentence(`${when === '' ? 'Then' : when} ${subject}: ${what}`),
        minutes,
        sure === '' ? '' : ` ${sure}`,
        correctionWords(context, entry),
      ].join(''),
  };
}
