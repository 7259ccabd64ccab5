import type { Entry } from '../../session/correct.ts';
import type { Payload } from '../../session/event.ts';
import type { Finding, Story } from '../../session/story.ts';
import type { Check } from '../../tree/model.ts';
import { isLook } from '../../tree/looked.ts';
import { neededBy } from '../../tree/states.ts';
import type { AccountContext } from '../context.ts';
import type { Phrasing } from './clause.ts';
import {
  askedThing,
  checkIn,
  asClause,
  readingWords,
  sentence,
  shownWords,
  toldFound,
} from '../words/wording.ts';

/** One finding as a sentence, what it was to tell before it where that is known. */
export function findingSentence(
  { story, who }: AccountContext,
  finding: Finding,
  { when, why = '', form = 'person' }: Phrasing,
): string {
  const thing = askedThing(story, finding.check, finding.leg);
  const found = bareReading(toldFound(story, finding) ?? plainFound(story, finding));
  const person = `${who} ${verbOf(story, finding, thing)} ${thing}`;
  const first = [when, why].filter((part) => part !== '').join(', ');
  if (first !== '') return sentence(`${first}${why === '' ? '' : ','} ${person}: ${found}`);
  return sentence(`${begun(form, { person, thing, finding })}: ${found}`);
}

/** What somebody did to come by a finding, in the past. */
function verbOf(story: Story, { check: id, leg }: Finding, thing: string): string {
  const check = checkIn(story, id, leg);
  if (isLook(id)) return 'looked at';
  if (thing.startsWith('whether ')) return 'checked';
  if (/^the (?:look|walk|search|try|round|run)\b/.test(thing)) return 'made';
  return check?.told === undefined ? 'asked' : done[check.kind];
}

type Begun = { readonly person: string; readonly thing: string; readonly finding: Finding };

/** The beginning of a sentence in one of its forms; what is no thing, or only somebody's look, has one. */
function begun(form: Phrasing['form'], { person, thing, finding }: Begun): string {
  // An open look at a named cause is somebody's: "it was not that" tells who looked.
  const isThing = !thing.startsWith('whether ') && !isLook(finding.check);
  if (form === 'next' && isThing) return `next came ${thing}`;
  if (form === 'thing' && isThing) return `${thing} came after that`;
  return form === 'person' ? person : `then ${person}`;
}

const done: Readonly<Record<Check['kind'], string>> = {
  look: 'looked at',
  listen: 'listened to',
  feel: 'felt',
  measure: 'measured',
  try: 'tried',
  ask: 'asked about',
};

/** Behind "we measured ...:" a reading needs no verb of its own. */
const bareReading = (found: string): string => found.replace(/ (?:was|were) read(?=$| \(|,)/, '');

function plainFound(story: Story, finding: Finding): string {
  const [reading, shown] = [readingWords(story, finding), shownWords(story, finding)];
  return reading === '' ? asClause(shown) : `${reading} (${shown})`;
}

/** That a reading lies outside what the check expects, and was insisted on. */
export const insistedWords = ({ insisted }: Finding): string =>
  insisted === true ? ' The reading is an unlikely one and was kept all the same.' : '';

/** That the passing state in which alone the check tells anything had been spent. */
export function unsaidWords({ story }: AccountContext, { check, leg, unsaid }: Finding): string {
  const tree = story.legs[leg]?.tree;
  const needed = unsaid && tree?.checks[check] && neededBy(tree, tree.checks[check]);
  return needed === undefined
    ? ''
    : ` The check tells something only while ${needed.say}, which a step before had spent; whether it was so again is not noted.`;
}

/** What was first recorded, and how it came to be put right. */
export function correctionWords(
  context: AccountContext,
  { event, said, correctedBy }: Entry,
): string {
  if (correctedBy.length === 0 || said === undefined) return '';
  const reason = reasonOf(context, correctedBy);
  const because = reason === '' ? '' : `: ${asClause(reason)}`;
  if (event.kind !== 'found' && event.kind !== 'proved')
    return ` The entry was first written otherwise and was put right afterwards${because}.`;
  const [first, read] = [shownWords(context.story, event), readingWords(context.story, event)];
  if (isSame(context.story, event, said)) return '';
  const typed = read === '' ? '' : `${read}, `;
  return ` ${sentence(`${context.who} had first written down ${typed}"${first}", and put it right afterwards${because}`)}`;
}

/** Whether an answer that was put right says what it said at first: then there was no slip. */
const isSame = (story: Story, first: Parameters<typeof shownWords>[1], now: Payload): boolean =>
  (now.kind === 'found' || now.kind === 'proved') &&
  shownWords(story, first) === shownWords(story, now) &&
  readingWords(story, first) === readingWords(story, now);

/** The reason that the last correction gave, or what was said of a contradiction. */
export function reasonOf({ story }: AccountContext, correctedBy: readonly number[]): string {
  const last = correctedBy.at(-1);
  const event = story.entries.find(({ event: one }) => one.n === last)?.event;
  if (event?.kind === 'settled') return 'it was taken for a misreading';
  return event?.kind === 'corrected' ? (event.reason ?? '') : '';
}
