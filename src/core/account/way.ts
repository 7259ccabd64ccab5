import type { Entry } from '../session/correct.ts';
import type { Kind, PayloadOf } from '../session/event.ts';
import type { Finding, Story } from '../session/story.ts';
import { clockTime, dateOf } from '../session/time.ts';
import { count } from '../text.ts';
import type { Block } from './block.ts';
import {
  askWords,
  causeName,
  checkIn,
  clause,
  readingWords,
  sentence,
  shownWords,
} from './wording.ts';

type Place = { readonly story: Story; readonly entry: Entry };
type Phrases = { readonly [K in Kind]?: (said: PayloadOf<K>, place: Place) => string | undefined };

/** The way from the first check to the last, one paragraph an event, in the order of the record. */
export function wayBlocks(story: Story): readonly Block[] {
  let day = dateOf(story.header.opened);
  return story.entries.flatMap((entry): Block[] => {
    const { event } = entry;
    if (entry.said?.kind === 'photographed') return [picture(entry.said)];
    const text = phrase(story, entry);
    if (text === undefined) return [];
    const turned: Block[] =
      dateOf(event.at) === day
        ? []
        : [{ kind: 'paragraph', text: sentence(`On ${dateOf(event.at)}`) }];
    day = dateOf(event.at);
    return [
      ...turned,
      ...warnings(story, entry),
      {
        kind: 'paragraph',
        text: `${clockTime(toldTime(entry) ?? event.at)} ${text}${mended(story, entry)}`,
      },
    ];
  });
}

/** A picture beside the record; anything but a plain relative path is only told, never linked. */
function picture({ file, caption }: PayloadOf<'photographed'>): Block {
  const plain = /^[\w][\w./ -]*$/.test(file) && !file.includes('..');
  return plain
    ? { kind: 'picture', file, caption }
    : { kind: 'paragraph', text: sentence(`Photograph: ${caption} (${file})`) };
}

/** What an event says in the account; undefined for what needs no words. */
export function phrase(story: Story, entry: Entry): string | undefined {
  const { said } = entry;
  if (said === undefined) return withdrawn(story, entry);
  const make = phrases[said.kind] as
    | ((said: unknown, place: Place) => string | undefined)
    | undefined;
  return make?.(said, { story, entry });
}

/** A thing taken back is told, not hidden. */
function withdrawn(story: Story, { event, correctedBy }: Entry): string | undefined {
  if (correctedBy.length === 0 || event.kind === 'stranger') return undefined;
  const what = 'check' in event ? `the answer to "${askWords(story, event.check)}"` : 'an entry';
  return `Here ${what} was recorded, and later withdrawn.`;
}

const toldTime = ({ said }: Entry): string | undefined =>
  said !== undefined && 'told' in said ? said.told : undefined;

/** What the correction replaced, if the event was corrected. */
function mended(story: Story, { event, said, correctedBy }: Entry): string {
  if (correctedBy.length === 0 || said === undefined) return '';
  if (event.kind !== 'found' && event.kind !== 'proved') return ' (Corrected later.)';
  const results = checkIn(story, event.check)?.results ?? [];
  const first = results.find(({ id }) => id === event.result)?.label ?? event.result;
  const typed =
    event.reading === undefined ? '' : ` (${event.reading.typed ?? event.reading.value})`;
  return ` It had first been recorded as "${first}"${typed} and was corrected.`;
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
    sentence(`${now === 'open' ? 'Opened up' : 'Closed up'}: ${clause(accessName(story, access))}`),
  condemned: ({ cause }, { story }) => `The cause was named: ${clause(causeName(story, cause))}.`,
  repaired: (said, { story }) => repaired(story, said),
  proved: ({ good }, { story, entry }) =>
    `${good ? 'The proof' : 'The proof failed'}: ${clause(found(story, entry) ?? '')}.`,
  leg: ({ tree, reason }, { story }) =>
    sentence(
      `The work went on with another complaint, "${story.legs.find((leg) => leg.tree.id === tree)?.tree.title ?? tree}"${reason === undefined ? '' : `: ${clause(reason)}`}`,
    ),
  'follow-up': ({ text }) => sentence(`To be done later: ${text}`),
  paused: () => 'The work was put down.',
  resumed: ({ torn }) =>
    torn === undefined
      ? 'The work was picked up again.'
      : `The work was picked up again after the record had been cut off (${count(torn, 'torn byte')} passed over).`,
};

const accessName = (story: Story, access: string): string =>
  story.legs.map(({ shop }) => shop.accesses[access]?.name).find((name) => name !== undefined) ??
  access;

function repaired(story: Story, said: PayloadOf<'repaired'>): string {
  const name = clause(causeName(story, said.cause));
  const parts = said.parts.length === 0 ? '' : ` Parts: ${said.parts.join(', ')}.`;
  const minutes = said.minutes === undefined ? '' : ` It took ${count(said.minutes, 'minute')}.`;
  const cost = said.cost === undefined ? '' : ` Cost: ${said.cost}.`;
  return `${said.did === undefined ? `Repaired: ${name}.` : sentence(`Repair of ${name}: ${said.did}`)}${parts}${minutes}${cost}`;
}

/** The cautions of a repair stand before it; those of checks are gathered at the end. */
function warnings(story: Story, { said }: Entry): Block[] {
  if (said?.kind !== 'repaired') return [];
  const leg = story.legs.find(({ tree }) => Object.hasOwn(tree.causes, said.cause));
  const cautions = leg?.tree.causes[said.cause]?.repair.cautions ?? [];
  return cautions.flatMap((id): Block[] => {
    const caution = leg?.shop.cautions[id];
    return caution === undefined
      ? []
      : [{ kind: 'warning', text: `${caution.hazard}: ${caution.text}` }];
  });
}
