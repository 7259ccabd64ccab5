import { percent } from '../../reason/history/wording.ts';
import { suspectsIn } from '../../reason/history/impact.ts';
import { unlisted } from '../../tree/model.ts';
import { chancesAtFirst } from '../../reason/history/belief-history.ts';
import { fromLegs, type Story } from '../../session/story.ts';
import { baselineWords } from '../../session/baseline/baseline.ts';
import { dateOf } from '../../session/clock.ts';
import type { Header } from '../../session/header/header.ts';
import { showReading } from '../../trade/units/units.ts';
import { heading, paragraph, type Block } from '../block.ts';
import type { AccountContext } from '../context.ts';
import {
  asClause,
  causeThing,
  joined,
  minuteWords,
  numberWord,
  sentence,
} from '../words/wording.ts';

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
  const sheet = Object.entries(story.sheet).flatMap(([id, { value, unit, where }]) => {
    // A figure that judges nothing in this job stays in the vehicle's own file.
    const name = fromLegs(story, ({ shop }) => shop.book[id]?.name.toLowerCase());
    const read = where === undefined ? '' : ` (${asClause(where)})`;
    return name === undefined ? [] : [`${name}: ${showReading(value, unit)}${read}`];
  });
  const place = conditionWords.flatMap(({ condition, where }) => {
    const known = conditions[condition];
    return known === undefined ? [] : [`${showReading(known.value, known.unit)} ${where}`];
  });
  const missing = conditionWords
    .filter(({ condition }) => conditions[condition] === undefined)
    .map(({ name }) => name);
  const by = header.who === '' ? '' : ` by ${header.who}`;
  const told = [
    ...whichOne(header),
    `The work was begun on ${dateOf(header.opened)}${by}, and ${minuteWords(story.minutes)} of it ${Math.round(story.minutes) <= 1 ? 'is' : 'are'} on record.`,
    ...(place.length === 0 ? [] : [sentence(`Conditions: ${joined(place)}`)]),
    ...(missing.length === 0
      ? []
      : [`Not recorded: ${joined(missing)}; readings were judged as they were read.`]),
    ...(facts.length === 0 ? [] : [sentence(`On the vehicle, ${facts.join('; ')}`)]),
    ...(sheet.length === 0 ? [] : [sentence(`By its own book, ${sheet.join('; ')}`)]),
  ];
  return [
    heading('The vehicle and the conditions'),
    paragraph(told.join(' ')),
    ...baselineBlocks(story),
  ];
}

/** What was taken down before anything was disturbed, and what was passed over. */
function baselineBlocks(story: Story): readonly Block[] {
  if (story.baseline.length === 0) return [];
  const items = story.baseline.map((one) => sentence(baselineWords(story, one)));
  return [
    paragraph('Before anything was disturbed this was taken down:'),
    { kind: 'list', items, numbered: false },
  ];
}

/** Facts that people know by their letters. */
const lettered = ['pcv', 'egr'];

const factName = (id: string): string =>
  lettered.includes(id) ? id.toUpperCase() : id.replaceAll('-', ' ');

/** `Built in 1968; pickup; straight six; 61,200 mi on the odometer.` */
function whichOne({ vehicle }: Header): readonly string[] {
  const { year, body, engine, odometer } = vehicle;
  const parts = [
    ...(year === undefined ? [] : [`built in ${year}`]),
    ...[body, engine].flatMap((part) => (part === undefined ? [] : [asClause(part)])),
    ...(odometer === undefined
      ? []
      : [`${showReading(odometer.value, odometer.unit)} on the odometer`]),
  ];
  return parts.length === 0 ? [] : [sentence(`The vehicle: ${parts.join('; ')}`)];
}

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
