import type { Entry } from '../../session/correct.ts';
import type { Kind, PayloadOf } from '../../session/event.ts';
import { accessName, type Finding, type Story } from '../../session/story.ts';
import { count } from '../../text.ts';
import {
  askWords,
  causeName,
  asClause,
  readingWords,
  sentence,
  shownWords,
} from '../words/wording.ts';

type Place = { readonly story: Story; readonly entry: Entry };
type Phrases = { readonly [K in Kind]?: (said: PayloadOf<K>, place: Place) => string | undefined };

/** One event in a few words: for a list of events, not for an account. */
export const eventWords = (story: Story, entry: Entry): string =>
  phrase(story, entry) ?? entry.event.kind.replaceAll('-', ' ');

function phrase(story: Story, entry: Entry): string | undefined {
  const { said } = entry;
  if (said === undefined) return withdrawn(story, entry);
  const make = phrases[said.kind] as
    | ((said: unknown, place: Place) => string | undefined)
    | undefined;
  return make?.(said, { story, entry });
}

/** A thing taken back is told, not hidden. */
function withdrawn(story: Story, { event, correctedBy }: Entry): string | undefined {
  if (correctedBy.length === 0 || event.kind === 'unknown') return undefined;
  const what = 'check' in event ? `the answer to "${askWords(story, event.check)}"` : 'an entry';
  return `Here ${what} was recorded, and later withdrawn.`;
}

const findingOf = (story: Story, { event }: Entry): Finding | undefined =>
  story.findings.find(({ n }) => n === event.n);

function found(story: Story, entry: Entry): string | undefined {
  const finding = findingOf(story, entry);
  if (finding === undefined) return undefined;
  const reading = readingWords(finding);
  const shown = shownWords(story, finding);
  const insisted =
    finding.insisted === true ? ' The reading is an unlikely one and was insisted on.' : '';
  return `${askWords(story, finding.check, finding.leg)}: ${reading === '' ? shown : `${reading}, ${shown}`}.${insisted}`;
}

const phrases: Phrases = {
  found: (_, { story, entry }) => found(story, entry),
  unsure: ({ check }, { story }) => `${askWords(story, check)}: it could not be told.`,
  skipped: ({ check, reason }, { story }) =>
    `${askWords(story, check)}: passed over. ${sentence(reason)}`,
  noted: ({ text }) => sentence(`Note: ${text}`),
  'part-off': ({ part, where }) =>
    sentence(`Taken off: ${part}${where === undefined ? '' : `, ${where}`}`),
  'part-on': ({ part }) => sentence(`Put back: ${part}`),
  access: ({ access, now }, { story }) =>
    sentence(
      `${now === 'open' ? 'Opened up' : 'Closed up'}: ${asClause(accessName(story, access))}`,
    ),
  condemned: ({ cause }, { story }) => `The cause was named: ${asClause(causeName(story, cause))}.`,
  repaired: (said, { story }) => repaired(story, said),
  proved: ({ good }, { story, entry }) =>
    `${good ? 'The proof' : 'The proof failed'}: ${asClause(found(story, entry) ?? '')}.`,
  leg: ({ tree, reason }, { story }) =>
    sentence(
      `The work went on with another complaint, "${story.legs.find((leg) => leg.tree.id === tree)?.tree.title ?? tree}"${reason === undefined ? '' : `: ${asClause(reason)}`}`,
    ),
  'follow-up': ({ text }) => sentence(`To be done later: ${text}`),
  paused: () => 'The work was put down.',
  resumed: ({ torn }) =>
    torn === undefined
      ? 'The work was picked up again.'
      : `The work was picked up again after the record had been cut off (${count(torn, 'torn byte')} passed over).`,
};

function repaired(story: Story, said: PayloadOf<'repaired'>): string {
  const name = asClause(causeName(story, said.cause));
  const parts = said.parts.length === 0 ? '' : ` Parts: ${said.parts.join(', ')}.`;
  const minutes = said.minutes === undefined ? '' : ` It took ${count(said.minutes, 'minute')}.`;
  const cost = said.cost === undefined ? '' : ` Cost: ${said.cost}.`;
  return `${said.did === undefined ? `Repaired: ${name}.` : sentence(`Repair of ${name}: ${said.did}`)}${parts}${minutes}${cost}`;
}
