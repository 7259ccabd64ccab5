import { leftOutWords, limitWords, moneyWords, passedWords } from '../../session/costs/words.ts';
import { measured } from '../../session/costs/limit.ts';
import { costsOf, type Costs, type PartLine } from '../../session/costs/costs.ts';
import type { Story } from '../../session/story.ts';
import { showMoney } from '../../trade/money/money.ts';
import { heading, paragraph, type Block } from '../block.ts';
import { causeThing, sentence } from '../words/wording.ts';

/** Every part with its price and what became of it, and the total by currency; nothing where none is noted. */
export function costBlocks(story: Story): readonly Block[] {
  const costs = costsOf(story);
  const table = tableOf(story, costs);
  // Costs of repairs alone stand with these.
  const all = table.length === 0 ? '' : toldOf(costs);
  const told = [all, limitTold(story)].filter((words) => words !== '').join(' ');
  if (table.length === 0 && told === '') return [];
  return [heading('What it cost'), ...table, ...(told === '' ? [] : [paragraph(told)])];
}

/** Parts without any price stand with their repair already. */
function tableOf(story: Story, { lines, parts }: Costs): readonly Block[] {
  if (lines.every(({ each, cause }) => each === undefined && cause !== undefined)) return [];
  return [
    {
      kind: 'table',
      head: ['Part', 'Count', 'Price each', 'Together', 'What became of it'],
      rows: [
        ...lines.map((line) => rowOf(story, line)),
        ...parts.map((total) => ['all told', '', '', showMoney(total), '']),
      ],
    },
  ];
}

const rowOf = (story: Story, { name, count, each, sum, use, cause }: PartLine): string[] => [
  name,
  String(count),
  each ?? 'not noted',
  sum !== undefined ? showMoney(sum) : each === undefined ? '' : 'not counted',
  cause === undefined
    ? useWords[use]
    : `${use === 'fitted' ? 'fitted' : useWords[use]}: ${causeThing(story, cause)}`,
];

const useWords = {
  fitted: 'fitted',
  spare: 'bought, not fitted',
  consumable: 'used up in the work',
} as const;

/** What the total leaves out, and what was noted of repairs in all. */
function toldOf(costs: Costs): string {
  const { repairs, spent, lines } = costs;
  const without = leftOutWords(costs);
  const apart = lines.some(({ cause, sum }) => cause === undefined && sum !== undefined);
  const all = apart ? `; with what was bought apart ${moneyWords(spent)} in all` : '';
  return [
    ...(without === '' ? [] : [sentence(`Parts and costs that no total counts: ${without}`)]),
    ...(repairs.length === 0
      ? []
      : [sentence(`The cost of the repairs was noted as ${moneyWords(repairs)}${all}`)]),
  ].join(' ');
}

/** The limit as it was agreed last, and whether what was entered passed it. */
function limitTold(story: Story): string {
  const agreed = story.limit && limitWords(story.limit, story.header.currency);
  if (agreed === undefined || agreed === '') return '';
  const passed = passedWords(measured(story));
  const kept =
    story.limit?.minutes === undefined && story.limit?.money === undefined
      ? ''
      : '; it was kept, as far as was entered';
  return sentence(
    `The limit agreed was ${agreed}${passed === '' ? kept : `; it was passed: ${passed}`}`,
  );
}
