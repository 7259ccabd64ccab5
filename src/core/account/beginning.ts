import { percent } from '../reason/sentence.ts';
import { suspectsIn } from '../reason/effect.ts';
import { unlisted } from '../reason/model.ts';
import { chancesAtFirst } from '../reason/trail.ts';
import type { Story } from '../session/story.ts';
import { dateOf } from '../session/time.ts';
import { showReading } from '../trade/units.ts';
import type { Block } from './block.ts';
import type { Teller } from './teller.ts';
import { causeName, clause, joined, minuteWords, numberWord, sentence } from './wording.ts';

/** The job in one paragraph: complaint, cause, correction. */
export function summaryBlock({ story }: Teller): Block {
  const causes = [...new Set(story.repairs.map(({ cause }) => cause))];
  const named = causes.length > 0 ? causes : story.condemned.map(({ cause }) => cause).slice(-1);
  const cause =
    named.length === 0
      ? 'Not found in this session.'
      : sentence(joined(named.map((id) => clause(causeName(story, id)))));
  return {
    kind: 'summary',
    parts: [
      { name: 'Complaint', text: sentence(story.legs[0]?.tree.complaint.say ?? '') },
      { name: named.length > 1 ? 'Causes' : 'Cause', text: causeWords(story, cause) },
      { name: 'Correction', text: correction(story) },
    ],
  };
}

/** With a failed proof the causes mended are no causes found. */
const causeWords = (story: Story, cause: string): string =>
  story.repairs.length > 0 && story.proofs.at(-1)?.good === false
    ? `Not found yet; what was mended did not cure it: ${clause(cause)}.`
    : cause;

function correction(story: Story): string {
  if (story.repairs.length === 0)
    return story.closed?.as === 'handed-on'
      ? 'Nothing was repaired; the vehicle was handed on.'
      : 'Nothing was repaired in this session.';
  const repairs = story.repairs.map(({ cause, did }) =>
    did === undefined ? `mended: ${clause(causeName(story, cause))}` : clause(did),
  );
  const proof = story.proofs.at(-1);
  const repaired = story.repairs.at(-1);
  const proven = proof?.good === true && proof.n > (repaired?.n ?? 0);
  const proved = proven
    ? "Proven by the complaint's own test."
    : 'Not proven: the complaint did not pass its own test after the last repair.';
  return `${sentence(repairs.join('; then '))} ${proved}`;
}

/** The vehicle, the place and the day, as far as a reader may know them. */
export function vehicleBlocks({ story }: Teller): readonly Block[] {
  const { header, conditions } = story;
  const facts = Object.entries(story.facts).map(([fact, value]) =>
    `${plainWords(fact)} ${plainWords(factWords(story, fact, value))}`.trim(),
  );
  const place = [
    ...(conditions.altitude === undefined
      ? []
      : [`${showReading(conditions.altitude.value, conditions.altitude.unit)} above sea level`]),
    ...(conditions.temperature === undefined
      ? []
      : [`${showReading(conditions.temperature.value, conditions.temperature.unit)} in the air`]),
  ];
  const missing = [
    ...(conditions.altitude === undefined ? ['the height above sea level'] : []),
    ...(conditions.temperature === undefined ? ['the air temperature'] : []),
  ];
  const by = header.who === '' ? '' : ` by ${header.who}`;
  const told = [
    `The work was begun on ${dateOf(header.opened)}${by}, and ${minuteWords(story.minutes)} of it ${Math.round(story.minutes) === 1 ? 'is' : 'are'} on record.`,
    ...(place.length === 0 ? [] : [sentence(`Conditions: ${joined(place)}`)]),
    ...(missing.length === 0
      ? []
      : [`Not recorded: ${joined(missing)}; readings were judged as they were read.`]),
    ...(facts.length === 0 ? [] : [sentence(`The vehicle: ${facts.join('; ')}`)]),
  ];
  return [
    { kind: 'heading', text: 'The vehicle and the conditions' },
    { kind: 'paragraph', text: told.join(' ') },
  ];
}

const plainWords = (id: string): string => id.replaceAll('-', ' ');

const factWords = ({ header }: Story, fact: string, value: string): string =>
  header.shop.facts[fact]?.values[value] ?? value;

/** Which causes it could have been, before anything was looked at. */
export function knownBlocks({ story }: Teller): readonly Block[] {
  const chances = chancesAtFirst(story);
  if (chances === undefined) return [];
  const suspects = suspectsIn(chances);
  const likeliest = suspects
    .toSorted((one, other) => (chances.get(other) ?? 0) - (chances.get(one) ?? 0))
    .slice(0, 3)
    .map((id) => `${clause(causeName(story, id))} (${percent(chances.get(id) ?? 0)})`);
  const off = chances.get(unlisted) ?? 0;
  return [
    { kind: 'heading', text: 'What was known at the start' },
    {
      kind: 'paragraph',
      text: `Before anything was looked at, ${numberWord(suspects.length)} known causes could have been behind it. The likeliest by experience: ${joined(likeliest)}.${off > 0.005 ? ` Something that is not on the list had ${percent(off)}.` : ''}`,
    },
  ];
}
