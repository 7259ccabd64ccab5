import type { Entry } from '../../session/correct.ts';
import type { Event } from '../../session/event.ts';
import type { AccountContext } from '../context.ts';
import { askedThing, asClause, causeThing, readingWords, shownWords } from '../words/wording.ts';
import { plain, type Clause } from './clause.ts';
import { reasonOf } from './finding-words.ts';

type Made = Omit<Clause, 'n' | 'at'>;
type Answer = Extract<Event, { kind: 'found' | 'proved' }>;

/**
 * What was written and taken back: told where it stood as long as it could mislead (an answer, a cause
 * named, a repair), and left to the record where it could not, or where the same was said again.
 */
export function withdrawnClause(
  context: AccountContext,
  event: Event,
  by: Entry['correctedBy'],
): Made {
  const reason = reasonOf(context, by);
  const because = reason === '' ? '' : `: ${asClause(reason)}`;
  const said = slipWords(context, event);
  return said === undefined
    ? plain(`an entry stood here and was taken back later${because}`, { kind: 'aside' })
    : plain(`${said}, and took it back later${because}`);
}

function slipWords({ story, who }: AccountContext, event: Event): string | undefined {
  switch (event.kind) {
    case 'found':
    case 'proved': {
      if (saidAgain(story.findings, event)) return undefined;
      const read = readingWords(story, event);
      const shown = `${read === '' ? '' : `${read}, `}"${shownWords(story, event)}"`;
      return `${who} first wrote down ${shown} for ${askedThing(story, event.check)}`;
    }
    case 'condemned':
      return `${who} named a cause (${causeThing(story, event.cause)})`;
    case 'not-this':
      return `${who} wrote down that it was not ${causeThing(story, event.cause)}`;
    case 'repaired':
      return `${who} wrote down a repair (${causeThing(story, event.cause)})`;
    default:
      return undefined;
  }
}

/** Whether the next answer to the same check that stands says the same. */
function saidAgain(findings: AccountContext['story']['findings'], event: Answer): boolean {
  const next = findings.find(({ n, check }) => n > event.n && check === event.check);
  return (
    next?.result === event.result &&
    next.orResult === event.orResult &&
    next.reading?.value === event.reading?.value
  );
}
