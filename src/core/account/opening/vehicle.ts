import { fromLegs, type Story } from '../../session/story.ts';
import { dateOf } from '../../session/clock.ts';
import type { Header } from '../../session/header/header.ts';
import { showReading } from '../../trade/units/units.ts';
import { paragraph, type Block } from '../block.ts';
import type { AccountContext } from '../context.ts';
import { asClause, joined, sentence } from '../words/wording.ts';

/** A unit as running text has it: a temperature with its degree sign. */
const placeReading = ({ value, unit }: { readonly value: number; readonly unit: string }) =>
  showReading(value, unit).replace(/ (C|F)$/, ' °$1');

const conditionWords = [
  { condition: 'altitude', where: 'above sea level', name: 'the height above sea level' },
  { condition: 'temperature', where: 'in the air', name: 'the air temperature' },
] as const;

/** What the vehicle has, the day, who worked, and what the weather and the height were. */
export function vehicleBlocks({ story }: AccountContext): readonly Block[] {
  const { header } = story;
  const by = header.who === '' ? '' : ` by ${header.who}`;
  const facts = factsOf(story);
  return [
    paragraph(
      [
        ...(facts.length === 0 ? [] : [sentence(`on the vehicle: ${facts.join('; ')}`)]),
        sentence(`the work was begun on ${dateOf(header.opened)}${by}${placeWords(story)}`),
      ].join(' '),
    ),
  ];
}

function placeWords({ conditions, findings }: Story): string {
  const place = conditionWords.flatMap(({ condition, where }) => {
    const known = conditions[condition];
    return known === undefined ? [] : [`${placeReading(known)} ${where}`];
  });
  const missing = conditionWords
    .filter(({ condition }) => conditions[condition] === undefined)
    .map(({ name }) => name);
  const read = findings.some(({ reading }) => reading !== undefined);
  const judged =
    missing.length === 0 || !read
      ? ''
      : `; ${joined(missing)} ${missing.length === 1 ? 'was' : 'were'} not recorded, so readings were judged as they were read`;
  return `${place.length === 0 ? '' : `, at ${joined(place)}`}${judged}`;
}

/** Each fact by its name in the shop of the complaint that asked for it. */
const factsOf = (story: Story): readonly string[] =>
  Object.entries(story.facts).map(([id, value]) => {
    const fact = fromLegs(story, ({ shop }) => shop.facts[id]);
    const name = fact?.name ?? id.replaceAll('-', ' ');
    return `${name}: ${asClause(fact?.values[value] ?? value)}`;
  });

/** `The vehicle: built in 1968, pickup, straight six, 61,200 mi on the odometer.`; nothing where nobody said. */
export function whichOne({ vehicle }: Header): readonly string[] {
  const { year, body, engine, odometer } = vehicle;
  const parts = [
    ...(year === undefined ? [] : [`built in ${year}`]),
    ...[body, engine].flatMap((part) => (part === undefined ? [] : [asClause(part)])),
    ...(odometer === undefined
      ? []
      : [`${showReading(odometer.value, odometer.unit)} on the odometer`]),
  ];
  return parts.length === 0 ? [] : [sentence(`the vehicle: ${parts.join(', ')}`)];
}

/** Figures of the vehicle's own book that readings were judged by. */
export function bookWords(story: Story): string {
  const sheet = Object.entries(story.sheet).flatMap(([id, { value, unit, where }]) => {
    // A figure that judges nothing in this job stays in the vehicle's own file.
    const name = fromLegs(story, ({ shop }) => shop.book[id]?.name.toLowerCase());
    const read = where === undefined ? '' : ` (${asClause(where)})`;
    return name === undefined ? [] : [`${name}: ${showReading(value, unit)}${read}`];
  });
  return sheet.length === 0 ? '' : sentence(`by its own book, ${sheet.join('; ')}`);
}
