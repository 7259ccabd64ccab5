import { parseMoney } from '../../trade/money/money.ts';
import type { ActionOf } from '../action.ts';
import type { PayloadOf } from '../event.ts';
import type { Story } from '../story.ts';
import { readPart } from '../costs/parts.ts';
import { accept, refuse, type Ruling } from './ruling.ts';

/** Notes a part bought apart from a repair; count, price and use may stand in its line or by themselves. */
export function buy({ part, count, price, use }: ActionOf<'part-bought'>): Ruling {
  const read = readPart(part);
  if (read.name === '')
    return refuse('no-part', 'No part is named.', 'Type it like 2 x fuse link at 3.50, spare.');
  if (read.count === 0)
    return refuse('no-count', 'None of it were bought.', 'Give a count of 1 or more.', part);
  const many = count ?? read.count;
  const each = price ?? read.each;
  return accept([
    {
      kind: 'part-bought',
      part: read.name,
      ...(many !== undefined && { count: many }),
      ...(each !== undefined && { price: each }),
      use: use ?? read.use ?? 'spare',
    },
  ]);
}

/** Records the whole limit as it is agreed now: what the action leaves out stays, what it empties goes. */
export function limit(action: ActionOf<'limit'>, story: Story): Ruling {
  const { minutes, money, replace } = { ...story.limit, ...action };
  if (money !== undefined && money.trim() !== '' && !canBeRead(money, story))
    return refuse(
      'money-unreadable',
      `"${money}" cannot be read as an amount of money.`,
      'Type it like 200 EUR or 12,40.',
      money,
    );
  const agreed: PayloadOf<'limit'> = {
    kind: 'limit',
    ...(minutes !== undefined && minutes > 0 && { minutes }),
    ...said('money', money),
    ...said('replace', replace),
  };
  const same = (['minutes', 'money', 'replace'] as const).every(
    (part) => story.limit?.[part] === agreed[part],
  );
  return same && story.limit !== undefined
    ? refuse('same-limit', 'That is what was agreed already.', 'Give minutes, money or replace.')
    : accept([agreed]);
}

const canBeRead = (money: string, { header }: Story): boolean =>
  parseMoney(money, header.currency) !== undefined;

const said = (part: 'money' | 'replace', text = '') =>
  text.trim() === '' ? {} : { [part]: text.trim() };
