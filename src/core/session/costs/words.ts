import { parseMoney, showMoney, type Money } from '../../trade/money/money.ts';
import { count } from '../../text.ts';
import type { Story } from '../story.ts';
import type { Costs } from './costs.ts';
import { passedParts, type Before, type Measured } from './limit.ts';

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

/** `2 h 5 min`, `40 min`: minutes as they stand beside a limit. */
export function shortMinutes(minutes: number): string {
  const whole = Math.round(minutes);
  const [hours, rest] = [Math.floor(whole / 60), whole % 60];
  return [
    ...(hours > 0 ? [`${hours} h`] : []),
    ...(rest > 0 || hours === 0 ? [`${rest} min`] : []),
  ].join(' ');
}

type Agreed = Pick<NonNullable<Story['limit']>, 'minutes' | 'money' | 'replace'>;

/** A limit in words: `2 h and 200.00 EUR; without asking: gaskets`; empty where nothing was agreed. */
export function limitWords({ minutes, money, replace }: Agreed, currency?: string): string {
  const amount = money === undefined ? undefined : parseMoney(money, currency);
  const of = [
    ...(minutes === undefined ? [] : [shortMinutes(minutes)]),
    ...(money === undefined ? [] : [amount === undefined ? money : showMoney(amount)]),
  ].join(' and ');
  const free = replace === undefined ? '' : `without asking: ${replace}`;
  return [of, free].filter((words) => words !== '').join('; ');
}

/** What passes the limit: `2 h 5 min of 2 h worked`, `210.00 EUR of 200.00 EUR spent`; empty for nothing. */
export function passedWords({ time, money }: Measured): string {
  const parts = passedParts({ time, money });
  return [
    ...(time !== undefined && parts.includes('time')
      ? [`${shortMinutes(time.spent)} worked of ${shortMinutes(time.of)}`]
      : []),
    ...(money !== undefined && parts.includes('money')
      ? [`${showMoney(money.spent)} spent of ${showMoney(money.of)}`]
      : []),
  ].join(' and ');
}

/** Why to stop and ask before a repair. */
export function askWords({ minutes, passesTime, left }: Before, of: string): string {
  return [
    ...(passesTime ? [`its ${shortMinutes(minutes)} would pass the limit of ${of}`] : []),
    ...(left === undefined
      ? []
      : [`it wants a dear part, and ${showMoney(left)} of the limit is left`]),
  ].join('; ');
}
