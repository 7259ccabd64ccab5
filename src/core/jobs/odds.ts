import { oddsWritten } from '../tree/counted/as-written.ts';
import type { Facts } from '../tree/facts.ts';
import type { Tree } from '../tree/model.ts';
import { sum } from '../sum.ts';

/** All odds of a tree as it was written, of what is not on its list too. */
export const totalOdds = (tree: Tree, facts: Facts = {}): number =>
  sum([
    ...Object.keys(tree.causes).map((cause) => oddsWritten(tree, cause, facts)),
    tree.counted?.unlisted ?? tree.unlisted,
  ]);
