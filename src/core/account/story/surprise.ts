import type { AccountContext } from '../context.ts';
import { oneIn } from '../clauses/grammar.ts';
import { isCured } from './cure.ts';

/** A result that comes less often than this, by all that was known before it, is a surprise. */
const surprising = 0.2;
/** So many are told: where all is a surprise nothing is. */
const mostTold = 2;

/** The findings of a story that nobody would have expected, the least expected first, at most two. */
export function surprises(context: AccountContext): ReadonlyMap<number, number> {
  const { story, history } = context;
  const unexpected = history.flatMap(({ n, expected, id, leg }) => {
    if (expected === undefined || expected >= surprising || isCured(context, n)) return [];
    const asked = story.legs[leg]?.tree.complaint.confirm === id;
    return asked || context.open.has(n) ? [] : [[n, expected] as const];
  });
  return new Map(unexpected.toSorted(([, one], [, other]) => one - other).slice(0, mostTold));
}

export const surpriseWords = (expected: number): string =>
  `By what was known until then only ${oneIn(expected)} would have shown that.`;
