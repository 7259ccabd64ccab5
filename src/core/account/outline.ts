import type { Story } from '../session/story.ts';
import { dateOf } from '../session/time.ts';
import { showReading } from '../trade/units.ts';
import { count } from '../text.ts';
import type { Block } from './block.ts';
import { cautionBlocks, proofBlocks, readingBlocks, toDoBlocks } from './tables.ts';
import { wayBlocks } from './way.ts';
import { causeName, clause, sentence } from './wording.ts';

/** What the account must say of the record itself. */
export type Record = {
  readonly events: number;
  /** Lines that were torn or altered and so passed over. */
  readonly passedOver: number;
  readonly link: string;
};

/** The account of a session as blocks, from the complaint to the closing link of its record. */
export function outline(story: Story, record: Record): readonly Block[] {
  const { header } = story;
  const [first] = story.legs;
  return [
    { kind: 'title', text: `${header.vehicle.name}: ${first?.tree.title ?? header.tree}` },
    ...summary(story),
    ...vehicle(story),
    { kind: 'heading', text: 'The way' },
    ...wayBlocks(story),
    ...readingBlocks(story),
    ...proofBlocks(story),
    ...toDoBlocks(story),
    ...cautionBlocks(story),
    ...closing(story, record),
  ];
}

/** The job in three sentences: complaint, cause, correction. */
function summary(story: Story): readonly Block[] {
  const [first] = story.legs;
  const causes = [...new Set(story.repairs.map(({ cause }) => cause))];
  const condemned =
    causes.length > 0 ? causes : story.condemned.map(({ cause }) => cause).slice(-1);
  const cause =
    condemned.length === 0
      ? 'Not found in this session.'
      : sentence(condemned.map((id) => causeName(story, id)).join('; '));
  return [
    { kind: 'named', name: 'Complaint', text: sentence(first?.tree.complaint.say ?? '') },
    { kind: 'named', name: 'Cause', text: cause },
    { kind: 'named', name: 'Correction', text: correction(story) },
  ];
}

function correction(story: Story): string {
  if (story.repairs.length === 0) return 'Nothing was repaired in this session.';
  const repairs = story.repairs.map(
    ({ cause, did }) => did ?? `repaired: ${clause(causeName(story, cause))}`,
  );
  const proof = story.proofs.at(-1);
  const repaired = story.repairs.at(-1);
  const proven = proof?.good === true && proof.n > (repaired?.n ?? 0);
  const proved = proven
    ? "Proven: the complaint's own test was repeated and showed good."
    : 'Not proven: the complaint did not pass its own test after the last repair.';
  return `${sentence(repairs.join('; then '))} ${proved}`;
}

function vehicle(story: Story): readonly Block[] {
  const { header, conditions, facts } = story;
  const amounts = [
    ['Height above sea level', conditions.altitude],
    ['Air temperature', conditions.temperature],
  ] as const;
  const items = [
    `Begun on ${dateOf(header.opened)}${header.who === '' ? '' : ` by ${header.who}`}; ${count(Math.round(story.minutes), 'minute')} of work recorded.`,
    ...amounts.map(([name, amount]) =>
      amount === undefined
        ? `${name}: not recorded.`
        : `${name}: ${showReading(amount.value, amount.unit)}.`,
    ),
    ...Object.entries(facts).map(([fact, value]) => `${words(fact)}: ${words(value)}.`),
  ];
  return [
    { kind: 'heading', text: 'The vehicle and the conditions' },
    { kind: 'list', items, numbered: false },
  ];
}

/** `ground-side` as people write it: `Ground side`. */
const words = (id: string): string => {
  const plain = id.replaceAll('-', ' ');
  return plain.slice(0, 1).toUpperCase() + plain.slice(1);
};

function closing(story: Story, { events, passedOver, link }: Record): readonly Block[] {
  const ended =
    story.closed === undefined
      ? 'This session is still open.'
      : `This session was closed as ${story.closed.as.replace('-', ' ')}${story.closed.text === undefined ? '.' : `: ${story.closed.text}`}`;
  return [
    { kind: 'heading', text: 'About this account' },
    {
      kind: 'paragraph',
      text: "The vehicle's own manual, local rules and licensed practice come before anything said here. What was right on this vehicle need not be right on another.",
    },
    {
      kind: 'paragraph',
      text: `${sentence(ended)} It was written from a record of ${count(events, 'event')}${passedOver === 0 ? '' : `; ${count(passedOver, 'line')} could not be read and had to be passed over`}. The record's closing link is ${link}.`,
    },
  ];
}
