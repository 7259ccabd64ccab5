import { showMoney, type Money } from '../../trade/money/money.ts';
import { count } from '../../text.ts';
import type { Costs } from './costs.ts';

/** Amounts of several currencies side by side: `12.40 EUR and $3.00`. */
export const moneyWords = (amounts: readonly Money[]): string =>
  amounts.map(showMoney).join(' and ');

/** What the total leaves out: `2 without a price; not counted: "a tenner"`; empty for nothing. */
export function leftOutWords({ withoutPrice, notCounted }: Costs): string {
  const kept = notCounted.map((text) => `"${text}"`).join(', ');
  return [
    ...(withoutPrice === 0 ? [] : [`${withoutPrice} without a price`]),
    ...(kept === '' ? [] : [`not counted: ${kept}`]),
  ].join('; ');
}

/** All parts in one line: `19.40 EUR; 2 without a price`; what of them was entered, no more. */
export function partsTotalWords(costs: Costs): string {
  const { lines, parts, repairs, spent } = costs;
  if (lines.length === 0 && repairs.length === 0 && costs.notCounted.length === 0)
    return 'none noted';
  const all = repairs.length === 0 ? '' : `with the costs noted of repairs ${moneyWords(spent)}`;
  const of = lines.length === 0 ? '' : count(lines.length, 'part');
  return [parts.length === 0 ? of : moneyWords(parts), leftOutWords(costs), all]
    .filter((words) => words !== '')
    .join('; ');
}
