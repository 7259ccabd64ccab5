import type { Entry } from '../../session/correct.ts';
import type { Finding } from '../../session/story.ts';
import type { Teller } from '../context.ts';
import {
  askWords,
  askedThing,
  checkIn,
  clause,
  isQuestion,
  readingWords,
  sentence,
  shownWords,
} from '../words/wording.ts';

const measured = ['came to', 'read', 'measured'] as const;

/** One finding as a sentence; `when` is `At 10:48` or empty. */
export function findingSentence(
  { story }: Teller,
  finding: Finding,
  { when, turn }: { readonly when: string; readonly turn: number },
): string {
  const ask = askWords(story, finding.check, finding.leg);
  const shown = shownWords(story, finding);
  const reading = readingWords(finding);
  const answer = reading === '' ? sentence(shown) : `${reading} (${shown}).`;
  if (isQuestion(story, finding.check, finding.leg))
    return when === ''
      ? `${ask}? ${answer}`
      : `${when} the question was: ${clause(ask)}? ${answer}`;
  const subject = when === '' ? ask : `${when}, ${clause(ask)}`;
  if (reading === '')
    return /:/.test(ask + shown) ? `${subject}, gave "${shown}".` : `${subject}: ${clause(shown)}.`;
  const comma = ask.includes(',') ? ',' : '';
  return `${subject}${comma} ${measured[turn % 3] ?? 'came to'} ${answer}`;
}

/** The same inside a list: `volts lost from each post to its own clamp (0.01 V, clean)`. */
export function findingItem({ story }: Teller, finding: Finding): string {
  const ask = clause(askWords(story, finding.check, finding.leg));
  const reading = readingWords(finding);
  const shown = clause(shownWords(story, finding));
  return `${ask} (${reading === '' ? shown : reading})`;
}

/** That a reading lies outside what the check expects, and was insisted on. */
export const insistedWords = ({ insisted }: Finding): string =>
  insisted === true ? ' The reading is an unlikely one and was kept all the same.' : '';

/** What was first recorded, and how it came to be put right. */
export function correctionWords(teller: Teller, { event, said, correctedBy }: Entry): string {
  if (correctedBy.length === 0 || said === undefined) return '';
  const reason = reasonOf(teller, correctedBy);
  const because = reason === '' ? '' : `: ${clause(reason)}`;
  if (event.kind !== 'found' && event.kind !== 'proved')
    return ` The entry was first written otherwise and was put right afterwards${because}.`;
  const results = checkIn(teller.story, event.check)?.results ?? [];
  const first = results.find(({ id }) => id === event.result)?.label ?? 'another result';
  const typed = event.reading === undefined ? '' : `${readingWords(event)}, `;
  return ` ${sentence(`${teller.who} had first written down ${typed}"${first}", and put it right afterwards${because}`)}`;
}

/** The reason that the last correction gave. */
export function reasonOf({ story }: Teller, correctedBy: readonly number[]): string {
  const last = correctedBy.at(-1);
  const event = story.entries.find(({ event: one }) => one.n === last)?.event;
  return event?.kind === 'corrected' ? (event.reason ?? '') : '';
}

/** What was withdrawn, told and not hidden. */
export function withdrawnWords(teller: Teller, { event, correctedBy }: Entry): string {
  const what =
    'check' in event ? `The answer to ${askedThing(teller.story, event.check)}` : 'An entry';
  const reason = reasonOf(teller, correctedBy);
  return `${what} stood here and was withdrawn later${reason === '' ? '' : `: ${clause(reason)}`}.`;
}
