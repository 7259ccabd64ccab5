import { accessThing as asOpened } from '../../session/apart/apart.ts';
import { fromLegs, tellingCause, type Story } from '../../session/story.ts';
import { bookWords } from '../../session/book.ts';
import { readWords, resultWords, type Shown } from '../../session/finding-words.ts';
import { showReading } from '../../trade/units/units.ts';
import type { Check } from '../../tree/model.ts';

/** First letter large, full stop at the end. */
export function sentence(text: string): string {
  const trimmed = text.trim();
  const begun = trimmed.slice(0, 1).toUpperCase() + trimmed.slice(1);
  return /[.!?]["”]?$/.test(begun) ? begun : `${begun}.`;
}

/** First letter small (unless the word is all capitals), no full stop: for use inside a sentence. */
export function asClause(text: string): string {
  const trimmed = text.trim().replace(/\.$/, '');
  return /^([A-Z][a-z]|A )/.test(trimmed)
    ? trimmed.slice(0, 1).toLowerCase() + trimmed.slice(1)
    : trimmed;
}

/** Words inside quotation marks: quotation marks of their own become single ones. */
export const quoted = (text: string): string => text.trim().replace(/\.$/, '').replaceAll('"', "'");

/** A cause by its name, from whichever tree of the session holds it. */
export const causeName = (story: Story, id: string): string =>
  story.legs.map(({ tree }) => tree.causes[id]?.name).findLast((name) => name !== undefined) ??
  'something not on the list';

/** A cause inside a sentence: as its tree tells it there, else its name. */
export const causeThing = (story: Story, id: string): string => causeIn(story, id);

/** A cause inside a sentence by the tree of the leg in which it is told, else by any other that has it. */
export function causeIn(story: Story, id: string, leg?: number): string {
  const cause = tellingCause(story, id, leg);
  return cause?.short ?? asClause(cause?.name ?? causeName(story, id));
}

/** An access inside a sentence: as the shop tells it there, else its name. */
export const accessThing = (story: Story, id: string): string => asClause(asOpened(story, id));

/** A check by its id, from the leg it was asked in or any other. */
export const checkIn = (story: Story, id: string, leg?: number): Check | undefined =>
  story.legs[leg ?? story.legs.length - 1]?.tree.checks[id] ??
  fromLegs(story, ({ tree }) => tree.checks[id]);

const askOf = (story: Story, id: string, leg?: number): string =>
  checkIn(story, id, leg)?.ask ?? 'A check that is not in this tree';

/** What a check asks, without the mark at its end. */
export const askWords = (story: Story, id: string, leg?: number): string =>
  askOf(story, id, leg).replace(/[?.:]$/, '');

const isQuestion = (story: Story, id: string, leg?: number): boolean =>
  askOf(story, id, leg).endsWith('?');

/** A check as a thing inside a sentence: as its tree tells it, else what it asks, a question in quotes. */
export const askedThing = (story: Story, id: string, leg?: number): string =>
  checkIn(story, id, leg)?.told ?? quotedAsk(story, id, leg);

/** What a check asks, inside a sentence: a question stands in quotes. */
const quotedAsk = (story: Story, id: string, leg?: number): string =>
  isQuestion(story, id, leg) ? `"${askOf(story, id, leg)}"` : asClause(askWords(story, id, leg));

/** A finding, or an event as it was first written. */
type Told = Shown & { readonly check: string; readonly leg?: number };

/** What a finding showed in words: the label of its result, or of those it may be. */
export const shownWords = (story: Story, finding: Told): string =>
  resultWords(checkIn(story, finding.check, finding.leg), finding);

/**
 * What a finding showed, as a past phrase of its tree: `there was none`, `0.4 ohm was read, a short`.
 * Undefined where the tree tells none, or where it may be one of several.
 */
export function toldFound(story: Story, finding: Told): string | undefined {
  const check = checkIn(story, finding.check, finding.leg);
  const told = check?.results.find(({ id }) => id === finding.result)?.told;
  const read = readWords(check, finding);
  if (told === undefined || finding.orResult !== undefined) return undefined;
  if (read === '' && told.includes('{reading}')) return undefined;
  if (read === '') return finding.words === undefined ? told : `${told} (${finding.words})`;
  const said = told.includes('{reading}') ? told.replaceAll('{reading}', () => read) : told;
  const notes = [...(said === told ? [read] : []), ...notesOf(story, finding)];
  return notes.length === 0 ? said : `${said} (${notes.join(', ')})`;
}

/** The readings of a finding as they were taken, with their unit; empty when none was. */
export function readingWords(story: Story, finding: Told): string {
  const read = readWords(checkIn(story, finding.check, finding.leg), finding);
  return read === '' ? '' : [read, ...notesOf(story, finding)].join(', ');
}

/** What else is told of a reading: under other conditions, and by whose figure it was judged. */
function notesOf(story: Story, { check: id, leg: at, standard }: Told): readonly string[] {
  const check = checkIn(story, id, at);
  const leg = story.legs[at ?? story.legs.length - 1];
  const book = check && leg ? bookWords(story, leg, check) : '';
  return [
    ...(standard === undefined
      ? []
      : [`which is ${showReading(standard.value, standard.unit)} ${standard.under}`]),
    ...(book === '' ? [] : [`judged ${book}`]),
  ];
}

/** Names of things joined as in speech: `a, b and c`; with semicolons where a name has a comma. */
export function joined(parts: readonly string[]): string {
  const last = parts.at(-1);
  if (last === undefined || parts.length < 2) return last ?? '';
  return parts.some((part) => part.includes(','))
    ? `${parts.slice(0, -1).join('; ')}; and ${last}`
    : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

const numerals = 'no one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** `four`; in figures above twelve. */
export const numberWord = (value: number): string => numerals[value] ?? String(value);

/** `1 minute`, `58 minutes`, `1 h 54 min`; a half and more counts up. */
export function minuteWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 1) return 'under a minute';
  if (whole < 100) return `${whole} ${whole === 1 ? 'minute' : 'minutes'}`;
  return `${Math.floor(whole / 60)} h ${whole % 60} min`;
}
