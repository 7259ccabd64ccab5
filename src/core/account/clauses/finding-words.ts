import type { Entry } from '../../session/correct.ts';
import type { Payload } from '../../session/event.ts';
import type { Finding, Story } from '../../session/story.ts';
import type { Check } from '../../tree/model.ts';
import { neededBy } from '../../tree/states.ts';
import type { AccountContext } from '../context.ts';
import {
  askWords,
  checkIn,
  asClause,
  isQuestion,
  readingWords,
  sentence,
  shownWords,
  toldFound,
} from '../words/wording.ts';

const measured = ['came to', 'read', 'measured'] as const;

/** One finding as a sentence; `when` is `At 10:48` or empty. */
export function findingSentence(
  context: AccountContext,
  finding: Finding,
  { when, turn }: { readonly when: string; readonly turn: number },
): string {
  const { story } = context;
  const told = toldSentence(context, finding, when);
  if (told !== undefined) return told;
  const ask = askWords(story, finding.check, finding.leg);
  const shown = shownWords(story, finding);
  const reading = readingWords(story, finding);
  const answer = reading === '' ? sentence(shown) : `${reading} (${shown}).`;
  if (isQuestion(story, finding.check, finding.leg))
    return when === ''
      ? `${ask}? ${answer}`
      : `${when} the question was: ${asClause(ask)}? ${answer}`;
  const subject = when === '' ? ask : `${when}, ${asClause(ask)}`;
  if (reading === '')
    return /:/.test(ask + shown)
      ? `${subject}, gave "${shown}".`
      : `${subject}: ${asClause(shown)}.`;
  const comma = ask.includes(',') ? ',' : '';
  return `${subject}${comma} ${measured[turn % 3] ?? 'came to'} ${answer}`;
}

const done: Readonly<Record<Check['kind'], string>> = {
  look: 'looked at',
  listen: 'listened to',
  feel: 'felt',
  measure: 'measured',
  try: 'tried',
  ask: 'asked about',
};

/** In the told forms of the tree, where it has them: `We measured the ohms of the coil: ...`. */
function toldSentence(
  { story, who }: AccountContext,
  finding: Finding,
  when: string,
): string | undefined {
  const check = checkIn(story, finding.check, finding.leg);
  if (check?.told === undefined) return undefined;
  const found = toldFound(story, finding) ?? plainFound(story, finding);
  const verb = check.told.startsWith('whether ') ? 'checked' : done[check.kind];
  return sentence(`${when === '' ? '' : `${when} `}${who} ${verb} ${check.told}: ${found}`);
}

function plainFound(story: Story, finding: Finding): string {
  const [reading, shown] = [readingWords(story, finding), shownWords(story, finding)];
  return reading === '' ? asClause(shown) : `${reading} (${shown})`;
}

/** The same inside a list: `volts lost from each post to its own clamp (0.01 V, clean)`. */
export function findingItem({ story }: AccountContext, finding: Finding): string {
  const check = checkIn(story, finding.check, finding.leg);
  const ask = check?.told ?? asClause(askWords(story, finding.check, finding.leg));
  const reading = readingWords(story, finding);
  const shown = toldFound(story, finding) ?? asClause(shownWords(story, finding));
  return `${ask} (${reading === '' ? shown : reading})`;
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
    : ` It tells something only while ${needed.say}, which a step before had spent; whether it was so again is not noted.`;
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
