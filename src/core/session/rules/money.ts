import type { ActionOf } from '../action.ts';
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
