import type { courseKinds } from '../kinds/course.ts';
import { type Parsed } from '../../problem.ts';
import { type Tree } from '../../tree/model.ts';
import { parseTreeValue } from '../../tree/parse.ts';
import { Shop } from '../../tree/shop.ts';
import { type PayloadOf } from '../event.ts';
import { asWalked } from '../header/walked-tree.ts';
import { nothing, type Folding } from './draft.ts';

/** How the job runs: on to another tree, put right, put down, taken up, ended. */
export const courseFolding: Folding<keyof typeof courseKinds> = {
  leg: (said, draft, { n }) => {
    const tree = readLeg(said);
    const shop = Shop.safeParse(said.shop);
    if (tree.kind === 'bad' || !shop.success) return;
    draft.facts = { ...draft.facts, ...said.facts };
    draft.sheet = { ...draft.sheet, ...said.sheet };
    draft.legs.push({
      tree: asWalked(tree.value, draft),
      shop: shop.data,
      since: n,
      ...(said.reason !== undefined && { reason: said.reason }),
      ...(said.complaint !== undefined && { complaint: said.complaint }),
    });
    draft.over = [];
  },
  worker: ({ who }, draft, { n }) => draft.workers.push({ n, who }),
  corrected: nothing,
  paused: nothing,
  resumed: nothing,
  closed: ({ kind: _, ...said }, draft, { n, stamp }) => {
    draft.closed = { ...said, n, stamp };
  },
  reopened: (_, draft) => {
    draft.closed = undefined;
  },
};

/** A leg's tree, read once: the event that holds it is the same object at every fold. */
const read = new WeakMap<object, Parsed<Tree>>();

function readLeg({ whole, tree }: PayloadOf<'leg'>): Parsed<Tree> {
  if (typeof whole !== 'object' || whole === null) return parseTreeValue(whole, tree);
  const known = read.get(whole) ?? parseTreeValue(whole, tree);
  read.set(whole, known);
  return known;
}
