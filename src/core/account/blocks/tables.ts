import { weighedFirst, weighedLast } from '../../reason/history/belief-history.ts';
import { at } from '../../at.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { apartNow, leftApart } from '../../session/apart/apart.ts';
import { type Finding, type Story } from '../../session/story.ts';
import { byUrgency, urgencyWords } from '../../session/follow-up.ts';
import { notNoted, partsWords } from '../../session/costs/parts.ts';
import { curedBy } from '../../reason/history/cured.ts';
import { clockTime } from '../../session/clock.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { impactCell } from '../clauses/impact.ts';
import type { AccountContext } from '../context.ts';
import {
  askWords,
  askedThing,
  causeName,
  checkIn,
  asClause,
  readingWords,
  sentence,
  shownWords,
} from '../words/wording.ts';

/** Every finding with what was found, what a healthy vehicle shows and what it told. */
export function readingBlocks(context: AccountContext): readonly Block[] {
  const { story } = context;
  if (story.findings.length === 0) return [];
  const rows = story.findings.map((finding, index) => {
    const check = checkIn(story, finding.check, finding.leg);
    return [
      String(index + 1),
      clockTime(finding.told ?? finding.stamp.at),
      askWords(story, finding.check, finding.leg),
      [readingWords(story, finding), shownWords(story, finding)]
        .filter((part) => part !== '')
        .join(', '),
      check?.healthy ?? check?.results[0]?.label ?? '',
      impactCell(context, finding.n),
    ];
  });
  const head = ['No.', 'Time', 'Check', 'Found', 'Healthy', 'What it told of the suspects'];
  // Without a tree nobody gave odds: there is nothing that a finding could tell of its suspects.
  const weighed = story.findings.filter(({ leg }) => !isOwn(at(story.legs, leg).tree));
  const columns = weighed.length === 0 ? head.length - 1 : head.length;
  return [
    heading('Readings and results'),
    {
      kind: 'table',
      head: head.slice(0, columns),
      rows: rows.map((row) => row.slice(0, columns)),
    },
    ...(weighed.every(({ n }) => context.stepAt(n) !== undefined) ? [] : [paragraph(longNote)]),
  ];
}

const longNote = `In so long a session the suspects were weighed after the first ${weighedFirst} and the last ${weighedLast} findings and repairs only.`;

/** What was repaired, with parts and costs. */
export function repairBlocks(story: Story): readonly Block[] {
  if (story.repairs.length === 0) return [];
  const rows = story.repairs.map(({ cause, did, parts, minutes, cost }) => [
    sentence(causeName(story, cause)).replace(/\.$/, ''),
    did ?? notNoted,
    partsWords(parts),
    minutes === undefined ? notNoted : String(minutes),
    cost ?? notNoted,
  ]);
  return [
    heading('What was done'),
    { kind: 'table', head: ['Repair', 'Done', 'Parts', 'Minutes', 'Cost'], rows },
  ];
}

/** The complaint's own test, and what was repeated with it, before and after. */
export function proofBlocks({ story }: AccountContext): readonly Block[] {
  if (story.repairs.length === 0) return [];
  const head = heading('The proof');
  const proof = story.proofs.at(-1);
  if (proof === undefined) return [head, paragraph('The repair was not put to the proof.')];
  const last = story.repairs.at(-1)?.n ?? 0;
  const repeated = new Set(story.findings.filter(({ n }) => n > last).map(({ check }) => check));
  const rows = [...repeated].map((check) => {
    const of = (test: (one: Finding) => boolean): Finding | undefined =>
      story.findings.findLast((one) => one.check === check && test(one));
    return [
      askWords(story, check),
      foundCell(
        story,
        of(({ n }) => n < last),
      ),
      foundCell(
        story,
        of(({ n }) => n > last),
      ),
    ];
  });
  for (const earlier of story.repairs.slice(0, -1))
    for (const { before, after } of curedBy(story, earlier))
      if (!repeated.has(after.check))
        rows.push([
          askWords(story, after.check),
          foundCell(story, before),
          `not taken; ${foundCell(story, after)} after the repair before it`,
        ]);
  const stale = proof.n < last ? ' It has not been repeated since the last repair.' : '';
  return [
    head,
    ...(rows.length === 0
      ? []
      : [{ kind: 'table' as const, head: ['Check', 'Before', 'After the last repair'], rows }]),
    paragraph(
      `${
        proof.good
          ? "The complaint's own test passed after the repair."
          : "The complaint's own test still showed the complaint after the repair."
      }${stale}`,
    ),
  ];
}

const foundCell = (story: Story, finding: Finding | undefined): string =>
  finding === undefined
    ? 'not taken'
    : [readingWords(story, finding), shownWords(story, finding)]
        .filter((part) => part !== '')
        .join(', ');

/** What is noted as left: the unsafe first, then parts and accesses, then checks that were passed over. */
export function toDoBlocks({ story }: AccountContext): readonly Block[] {
  const followUps = byUrgency(story.followUps).map(({ urgency, text }) =>
    sentence(`${urgencyWords[urgency]}: ${asClause(text)}`),
  );
  const items = [
    ...followUps,
    ...apartNow(story).map((thing) => sentence(leftApart(story, thing))),
    ...story.skipped.map(({ check, reason }) =>
      sentence(`Passed over: ${askedThing(story, check)} (${asClause(reason)})`),
    ),
    ...story.unsure.map(({ check }) => sentence(`Could not be told: ${askedThing(story, check)}`)),
  ];
  return [
    heading('Still to do'),
    items.length === 0
      ? paragraph('Nothing is noted as still to do.')
      : { kind: 'list', items, numbered: false },
  ];
}

/** What makes the vehicle unsafe stands before everything else. */
export const unsafeBlocks = ({ followUps }: Story): readonly Block[] =>
  followUps
    .filter(({ urgency }) => urgency === 'unsafe')
    .map(({ text }) => ({ kind: 'warning', name: 'not to be driven yet', text: sentence(text) }));
