import { costsOf } from '../../session/costs/costs.ts';
import { moneyWords } from '../../session/costs/words.ts';
import { readPart, saysNone } from '../../session/costs/parts.ts';
import { sum } from '../../sum.ts';
import { checkIn, fromLegs, type Story } from '../../session/story.ts';
import { paragraph, type Block } from '../block.ts';
import { ledgerOf } from '../blocks/ledger.ts';
import type { AccountContext } from '../context.ts';
import { asClause, joined, minuteWords, sentence } from '../words/wording.ts';

/** What the job took: time, money, parts and the tools its steps call for; only what was entered. */
export const totalBlocks = ({ story, length }: AccountContext): readonly Block[] => [
  paragraph(
    [timeWords(story), partWords(story), ...(length === 'short' ? [] : [toolWords(story)])]
      .filter((words) => words !== '')
      .join(' '),
  ),
];

function timeWords(story: Story): string {
  const { lost, away } = ledgerOf(story);
  const gone =
    lost < 0.5 ? '' : `, ${minuteWords(lost)} of them on what was done over or did not cure`;
  const apart = away < 60 ? '' : `, with ${minuteWords(away)} away from it`;
  const took = story.minutes < 0.5 ? 'less than a minute' : minuteWords(story.minutes);
  const noted = sum(story.repairs.map(({ minutes = 0 }) => minutes));
  // Typed in after the work, a repair is noted with more minutes than the record was open.
  if (noted > story.minutes)
    return sentence(
      `by the clock it took ${took}${gone}${apart}; ${minuteWords(noted)} of work are noted for ${story.repairs.length === 1 ? 'the repair' : 'the repairs'}`,
    );
  return sentence(`it took ${took} of work${gone}${apart}`);
}

/** Parts that were fitted or used, and what they cost as far as that was noted. */
function partWords(story: Story): string {
  const named = partNames(story);
  const costs = costsOf(story);
  const cost = costs.spent.length === 0 ? '' : `${moneyWords(costs.spent)} as noted`;
  if (named.length === 0) return cost === '' ? '' : `The cost: ${cost}.`;
  return sentence(`parts: ${joined(named)}${cost === '' ? '' : `; ${cost}`}`);
}

/** Parts by name: what was fitted or used up, as somebody noted it. */
export const partNames = ({
  repairs,
  bought,
}: Pick<Story, 'repairs' | 'bought'>): readonly string[] => [
  ...repairs.flatMap(({ parts }) =>
    saysNone(parts) ? [] : parts.map((part) => readPart(part).name),
  ),
  ...bought.filter(({ use }) => use === 'consumable').map(({ part }) => part),
];

/** What lies by in every shop, or is worn: nobody goes to look for it. Our own judgment. */
const alwaysThere: readonly string[] = [
  'hand',
  'rags',
  'lamp',
  'sniff',
  'extinguisher',
  'goggles',
  'wheel-chocks',
  'screwdriver',
  'phone-camera',
  'tags',
  'vise',
];

/** The tools that the steps taken call for, by the trees; whether they were used nobody entered. */
export function toolsOf(story: Story): readonly string[] {
  const ids = [
    ...story.findings.flatMap(({ check, leg }) => checkIn(story, check, leg)?.tools ?? []),
    ...story.repairs.flatMap(
      ({ cause, leg }) => story.legs[leg]?.tree.causes[cause]?.repair.tools ?? [],
    ),
  ];
  return [...new Set(ids)].flatMap((id) => {
    const name = fromLegs(story, ({ shop }) => shop.tools[id]?.name);
    if (name === undefined || alwaysThere.includes(id)) return [];
    return [asClause(/^[^,;:(]*/.exec(name)?.[0] ?? name)];
  });
}

function toolWords(story: Story): string {
  const tools = toolsOf(story);
  return tools.length === 0 ? '' : sentence(`its steps call for: ${joined(tools)}`);
}
