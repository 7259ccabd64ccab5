import { sum } from '../sum.ts';
import type { Tree } from '../tree/model.ts';

/** All odds of a tree, what is not on its list among them; those of what a repair brought are none of it. */
export const totalOdds = ({ causes, unlisted }: Tree): number =>
  sum([...Object.values(causes).map(({ odds }) => odds), unlisted]);
