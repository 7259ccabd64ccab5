import { parseMoney, type Money } from '../../trade/money/money.ts';
import { costsOf } from './costs.ts';
import { currentLeg, type Story } from '../story.ts';

/** What is set against a limit: what was entered, and what the limit is. */
type Against<T> = { readonly spent: T; readonly of: T };

/** The time and the money that a limit speaks of, each against what was spent of it. */
export type Measured = {
  readonly time: Against<number> | undefined;
  /** In the currency of the limit; what was spent in another is not set against it. */
  readonly money: Against<Money> | undefined;
};

/** What was spent of the limit that holds. @param minutes worked, where the clock has gone on since the last event */
export function measured(story: Story, minutes: number = story.minutes): Measured {
  const { limit } = story;
  const of = limitMoney(story);
  const spent = of && costsOf(story).spent.find(({ currency }) => currency === of.currency);
  return {
    time: limit?.minutes === undefined ? undefined : { spent: minutes, of: limit.minutes },
    money: of && { spent: spent ?? { currency: of.currency, minor: 0n }, of },
  };
}

/** The amount of a limit of money; it was read before it was recorded. */
const limitMoney = ({ limit, header }: Story): Money | undefined =>
  limit?.money === undefined ? undefined : parseMoney(limit.money, header.currency);

/** Which parts of the limit are passed now. */
export function passedParts({ time, money }: Measured): readonly ('time' | 'money')[] {
  return [
    ...(time !== undefined && time.spent > time.of ? (['time'] as const) : []),
    ...(money !== undefined && money.spent.minor > money.of.minor ? (['money'] as const) : []),
  ];
}

/** Why to ask before a repair: its minutes would pass the limit, or it wants a dear part and money is limited. */
export type Before = {
  readonly cause: string;
  /** Minutes of the repair, with what must be opened for it. */
  readonly minutes: number;
  readonly passesTime: boolean;
  /** What is left of the money, where a dear part is wanted: its price stands in no tree. */
  readonly left: Money | undefined;
};

/** What is to be asked before a repair of a cause; undefined where the limit leaves room, or is passed already. */
export function askBefore(
  story: Story,
  cause: string,
  minutes: number = story.minutes,
): Before | undefined {
  const { tree, shop } = currentLeg(story);
  const repair = tree.causes[cause]?.repair;
  if (repair === undefined) return undefined;
  const needs = repair.access
    .filter((id) => !story.open.includes(id))
    .reduce((sum, id) => sum + (shop.accesses[id]?.open ?? 0), repair.minutes);
  const now = measured(story, minutes);
  const passed = passedParts(now);
  const passesTime =
    now.time !== undefined && !passed.includes('time') && minutes + needs > now.time.of;
  const dear = repair.part === 'dear' && now.money !== undefined && !passed.includes('money');
  const left = dear ? leftOf(now.money) : undefined;
  return passesTime || left !== undefined ? { cause, minutes: needs, passesTime, left } : undefined;
}

const leftOf = ({ spent, of }: Against<Money>): Money => ({
  currency: of.currency,
  minor: of.minor - spent.minor,
});

/** Whether anything was opened or taken off yet. */
export const isDismantled = ({ entries }: Pick<Story, 'entries'>): boolean =>
  entries.some(
    ({ said }) => (said?.kind === 'access' && said.now === 'open') || said?.kind === 'part-off',
  );
