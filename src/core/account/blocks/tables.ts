import { weighedFirst, weighedLast } from '../../reason/history/belief-history.ts';
import { at } from '../../at.ts';
import { isOwn } from '../../tree/own/bare.ts';
import { accessThing, apartNow, leftApart } from '../../session/apart/apart.ts';
import { isHealthy, type Finding, type Story } from '../../session/story.ts';
import { byUrgency, urgencyWords } from '../../session/follow-up.ts';
import { notNoted, partsWords } from '../../session/costs/parts.ts';
import { clockTime } from '../../session/clock.ts';
import { heading, paragraph, type Block } from '../block.ts';
import type { AccountContext } from '../context.ts';
import { baselineWords } from '../../session/baseline/baseline.ts';
import { outcomeOf, partsOf } from '../opening/part.ts';
import { bookWords } from '../opening/vehicle.ts';
import {
  askWords,
  askedThing,
  causeIn,
  checkIn,
  asClause,
  joined,
  readingWords,
  sentence,
  shownWords,
} from '../words/wording.ts';

/** Every finding with what was found; a healthy vehicle's own figure where a reading can be held against it. */
export function readingBlocks(context: AccountContext): readonly Block[] {
  const { story } = context;
  if (story.findings.length === 0) return [];
  const last = story.repairs.at(-1)?.n ?? Infinity;
  const rows = story.findings.map((finding, index) => [
    String(index + 1),
    clockTime(finding.told ?? finding.stamp.at),
    `${checkName(story, finding)}${finding.n > last ? ', after the repair' : ''}`,
    [foundCell(story, finding), context.setAside.get(finding.n) ?? '']
      .filter((part) => part !== '')
      .join('; '),
  ]);
  const book = bookWords(story);
  return [
    heading('Readings and results'),
    { kind: 'table', head: ['No.', 'Time', 'Check', 'Found'], rows },
    ...(book === '' ? [] : [paragraph(book)]),
    ...(allWeighed(context) ? [] : [paragraph(longNote)]),
  ];
}

const allWeighed = ({ story, stepAt }: AccountContext): boolean =>
  story.findings
    .filter(({ leg }) => !isOwn(at(story.legs, leg).tree))
    .every(({ n }) => stepAt(n) !== undefined);

/** A check as the head of a row: as its tree tells it, else as it asks. */
const checkName = (story: Story, { check, leg }: Pick<Finding, 'check' | 'leg'>): string =>
  sentence(checkIn(story, check, leg)?.told ?? askWords(story, check, leg)).replace(/\.$/, '');

const longNote = `In so long a session the suspects were weighed after the first ${weighedFirst} and the last ${weighedLast} findings and repairs only.`;

/** What was repaired, with parts and costs. */
export function repairBlocks(story: Story): readonly Block[] {
  if (story.repairs.length === 0) return [];
  const rows = story.repairs.map(({ cause, leg, did, parts, minutes, cost }) => [
    sentence(causeIn(story, cause, leg)).replace(/\.$/, ''),
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

/** What was read again after a repair, each with what it had shown before it; nothing where nothing was. */
export function proofBlocks({ story }: AccountContext): readonly Block[] {
  const rows = story.repairs.flatMap((repair, index) => {
    const next = story.repairs[index + 1]?.n ?? Infinity;
    const since = story.findings.filter(({ n }) => n > repair.n && n < next);
    return [...new Map(since.map((one) => [one.check, one])).values()].flatMap((after) => {
      const before = story.findings.findLast(
        ({ n, check }) => n < repair.n && check === after.check,
      );
      return before === undefined || isHealthy(story, before) || !isHealthy(story, after)
        ? []
        : [[checkName(story, after), foundCell(story, before), foundCell(story, after)]];
    });
  });
  if (rows.length === 0) return [];
  return [
    heading('Before and after'),
    { kind: 'table', head: ['Check', 'Before the repair', 'After it'], rows },
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
  // What is unsafe stands before everything else already.
  const followUps = byUrgency(story.followUps).filter(({ urgency }) => urgency !== 'unsafe');
  const items = [
    ...followUps.map(({ urgency, text }) =>
      sentence(`${urgencyWords[urgency]}: ${asClause(text)}`),
    ),
    ...notClosed(story),
    ...apartNow(story)
      .filter(({ kind }) => kind !== 'access')
      .map((thing) => sentence(leftApart(story, thing))),
    ...story.skipped.map(({ check, reason }) =>
      sentence(`Passed over: ${askedThing(story, check)} (${asClause(reason)})`),
    ),
    ...story.unsure.map(({ check }) => sentence(`Could not be told: ${askedThing(story, check)}`)),
  ];
  if (items.length > 0)
    return [paragraph('Still to do:'), { kind: 'list', items, numbered: false }];
  // Only a proof ends a job: nothing noted is not the same as nothing left to do.
  return partsOf(story).every((part) => outcomeOf(story, part) === 'proven')
    ? [paragraph(`Nothing ${story.followUps.length > 0 ? 'else ' : ''}is noted as still to do.`)]
    : [];
}

/** What was opened and never said to be closed up again, in one line. */
function notClosed(story: Story): readonly string[] {
  const open = apartNow(story).flatMap((thing) =>
    thing.kind === 'access' ? [asClause(accessThing(story, thing.access))] : [],
  );
  return open.length === 0 ? [] : [sentence(`Not said to be closed up again: ${joined(open)}`)];
}

/** What was taken down before anything was disturbed, and what was passed over. */
export function baselineBlocks(story: Story): readonly Block[] {
  if (story.baseline.length === 0) return [];
  const items = story.baseline.map((one) => sentence(baselineWords(story, one)));
  return [heading('Before anything was disturbed'), { kind: 'list', items, numbered: false }];
}

/** What makes the vehicle unsafe stands before everything else. */
export const unsafeBlocks = ({ followUps }: Story): readonly Block[] =>
  followUps
    .filter(({ urgency }) => urgency === 'unsafe')
    .map(({ text }) => ({ kind: 'warning', name: 'not to be driven yet', text: sentence(text) }));
