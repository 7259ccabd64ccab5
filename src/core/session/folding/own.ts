import type { ownKinds } from '../kinds/own.ts';
import { withNamed, withOwnCause, withTaken } from '../../tree/own/named.ts';
import { Check } from '../../tree/shapes.ts';
import { Shop } from '../../tree/shop.ts';
import type { Tree } from '../../tree/model.ts';
import { currentLeg } from '../story.ts';
import type { Draft, Folding } from './draft.ts';

/** Checks and causes that a person names are in the leg's tree from there on. */
export const ownFolding: Folding<keyof typeof ownKinds> = {
  'check-named': ({ kind: _, ...said }, draft, { n }) => {
    widen(draft, withNamed(currentLeg(draft).tree, said));
    draft.named.push({ n, kind: 'check', id: said.check });
  },
  'check-taken': ({ check, tree, whole, shop }, draft, { n }) => {
    const read = Check.safeParse(whole);
    const uses = Shop.safeParse(shop);
    if (!read.success || !uses.success) return;
    widen(draft, withTaken(currentLeg(draft).tree, check, read.data), uses.data);
    draft.named.push({ n, kind: 'check', id: check, from: tree });
  },
  'cause-named': ({ kind: _, ...said }, draft, { n }) => {
    widen(draft, withOwnCause(currentLeg(draft).tree, said));
    draft.named.push({ n, kind: 'cause', id: said.cause });
  },
};

/** The leg's tree with more in it; of the shop, what that uses. */
function widen(draft: Draft, tree: Tree, uses?: Shop): void {
  const leg = currentLeg(draft);
  const { shop } = leg;
  draft.legs[draft.legs.length - 1] = {
    ...leg,
    tree,
    shop:
      uses === undefined
        ? shop
        : {
            ...shop,
            cautions: { ...uses.cautions, ...shop.cautions },
            tools: { ...uses.tools, ...shop.tools },
            accesses: { ...uses.accesses, ...shop.accesses },
          },
  };
}
