import { percent } from '../../reason/history/wording.ts';
import { suspectsIn } from '../../reason/history/impact.ts';
import { unlisted } from '../../tree/model.ts';
import { chancesAtFirst } from '../../reason/history/belief-history.ts';
import { triesSoFar } from '../../session/proof.ts';
import { firstLeg, fromLegs, type Story } from '../../session/story.ts';
import { triageOf } from '../../session/triage.ts';
import { dateOf } from '../../session/clock.ts';
import { showReading } from '../../trade/units/units.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { failedRepairs } from './ledger.ts';
import type { AccountContext } from '../context.ts';
import {
  asClause,
  causeName,
  causeThing,
  joined,
  minuteWords,
  numberWord,
  sentence,
} from '../words/wording.ts';

/** The job in one paragraph: complaint, cause, correction. */
export function summaryBlock({ story }: AccountContext): Block {
  const named = causesFound(story);
  const cause =
    named.length === 0
      ? 'Not found in this session.'
      : sentence(
          joined(named.map((id) => `${asClause(causeName(story, id))}${asFound(story, id)}`)),
        );
  return {
    kind: 'summary',
    parts: [
      { name: 'Complaint', text: sentence(firstLeg(story).tree.complaint.say) },
      { name: named.length > 1 ? 'Causes' : 'Cause', text: cause },
      { name: 'Correction', text: correction(story) },
    ],
  };
}

/** What exactly was found, in the person's own words, where they noted it. */
function asFound({ condemned }: Story, cause: string): string {
  const found = condemned.findLast((one) => one.cause === cause)?.found;
  return found === undefined ? '' : ` (${asClause(found)})`;
}

/** What was mended and did cure, or else was named and not mended; what failed its proof is no cause found. */
function causesFound(story: Story): readonly string[] {
  const failed = new Set(failedRepairs(story).map(({ n }) => n));
  const mended = story.repairs.filter(({ n }) => !failed.has(n)).map(({ cause }) => cause);
  if (mended.length > 0) return [...new Set(mended)];
  const open = story.condemned.filter(
    ({ cause }) => !story.repairs.some((repair) => repair.cause === cause),
  );
  return open.map(({ cause }) => cause).slice(-1);
}

function correction(story: Story): string {
  const triage = triageOf(story);
  if (triage !== undefined) return forInspection(story, triage);
  if (story.repairs.length === 0)
    return story.closed?.as === 'handed-on'
      ? 'Nothing was repaired; the vehicle was handed on.'
      : 'Nothing was repaired in this session.';
  const failed = new Set(failedRepairs(story).map(({ n }) => n));
  const repairs = story.repairs.map(({ cause, did, n }) => {
    const done = did === undefined ? `mended: ${asClause(causeName(story, cause))}` : asClause(did);
    return failed.has(n) ? `${done} (this did not cure it)` : done;
  });
  return `${sentence(repairs.join('; then '))} ${proofWords(story)}`;
}

/** What a tree that only sorts comes to, whatever was found or done: nothing of it is proven. */
function forInspection({ closed, repairs }: Story, triage: string): string {
  const handed = closed?.as === 'handed-on' ? 'Handed to inspection' : 'Still to be inspected';
  const mended = repairs.length === 0 ? 'Nothing was repaired.' : 'No repair in it is proven.';
  return `${handed}: ${triage} ${mended}`;
}

/** Whether the last repair stood its test. */
function proofWords(story: Story): string {
  const { proofs, repairs } = story;
  const proof = proofs.at(-1);
  if (proof === undefined || proof.n < (repairs.at(-1)?.n ?? 0))
    return "Not proven: the complaint's own test was not repeated after the last repair.";
  const soFar = triesSoFar(story);
  if (soFar !== undefined) return `Not proven yet: ${soFar}.`;
  return proof.good
    ? "Proven by the complaint's own test."
    : "Not proven: the complaint's own test still failed after the last repair.";
}

const conditionWords = [
  { condition: 'altitude', where: 'above sea level', name: 'the height above sea level' },
  { condition: 'temperature', where: 'in the air', name: 'the air temperature' },
] as const;

/** The vehicle, the place and the day, as far as a reader may know them. */
export function vehicleBlocks({ story }: AccountContext): readonly Block[] {
  const { header, conditions } = story;
  const facts = Object.entries(story.facts).map(
    ([fact, value]) => `${factName(fact)}: ${factWords(story, fact, value)}`,
  );
  const sheet = Object.entries(header.vehicle.sheet ?? {}).map(
    ([id, { value, unit, where }]) =>
      `${bookName(story, id)}: ${showReading(value, unit)}${where === undefined ? '' : ` (${asClause(where)})`}`,
  );
  const place = conditionWords.flatMap(({ condition, where }) => {
    const known = conditions[condition];
    return known === undefined ? [] : [`${showReading(known.value, known.unit)} ${where}`];
  });
  const missing = conditionWords
    .filter(({ condition }) => conditions[condition] === undefined)
    .map(({ name }) => name);
  const by = header.who === '' ? '' : ` by ${header.who}`;
  const told = [
    `The work was begun on ${dateOf(header.opened)}${by}, and ${minuteWords(story.minutes)} of it ${Math.round(story.minutes) === 1 ? 'is' : 'are'} on record.`,
    ...(place.length === 0 ? [] : [sentence(`Conditions: ${joined(place)}`)]),
    ...(missing.length === 0
      ? []
      : [`Not recorded: ${joined(missing)}; readings were judged as they were read.`]),
    ...(facts.length === 0 ? [] : [sentence(`On the vehicle, ${facts.join('; ')}`)]),
    ...(sheet.length === 0 ? [] : [sentence(`By its own book, ${sheet.join('; ')}`)]),
  ];
  return [heading('The vehicle and the conditions'), paragraph(told.join(' '))];
}

/** Facts that people know by their letters. */
const lettered = ['pcv', 'egr'];

const factName = (id: string): string =>
  lettered.includes(id) ? id.toUpperCase() : id.replaceAll('-', ' ');

const bookName = (story: Story, id: string): string =>
  fromLegs(story, ({ shop }) => shop.book[id]?.name.toLowerCase()) ?? id.replaceAll('-', ' ');

const factWords = ({ header }: Story, fact: string, value: string): string =>
  header.shop.facts[fact]?.values[value] ?? value;

/** Which causes it could have been, before anything was looked at. */
export function knownBlocks({ story }: AccountContext): readonly Block[] {
  const chances = chancesAtFirst(story);
  if (chances === undefined) return [];
  const suspects = suspectsIn(chances);
  const likeliest = suspects
    .toSorted((one, other) => (chances.get(other) ?? 0) - (chances.get(one) ?? 0))
    .slice(0, 3)
    .map((id) => `${causeThing(story, id)} (${percent(chances.get(id) ?? 0)})`);
  const off = chances.get(unlisted) ?? 0;
  return [
    heading('What was known at the start'),
    paragraph(
      `Before anything was looked at, ${numberWord(suspects.length)} known causes could have been behind it. The likeliest by experience: ${joined(likeliest)}.${off > 0.005 ? ` Something that is not on the list had ${percent(off)}.` : ''}`,
    ),
  ];
}
