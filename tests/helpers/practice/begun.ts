import { hideFault, saltOf, type Wish } from '../../../src/core/reason/practice/hide.ts';
import type { Header } from '../../../src/core/session/header/header.ts';
import { newHeader } from '../../../src/core/session/header/new-header.ts';
import { asWalked } from '../../../src/core/session/header/walked-tree.ts';
import { commitmentOf, type Secret } from '../../../src/core/session/practice/secret.ts';
import type { Tree } from '../../../src/core/tree/model.ts';
import { sha256 } from '../../../src/store/recover.ts';
import { shippedShop } from '../library.ts';
import { stampAt } from '../story.ts';

export type Begun = { readonly header: Header; readonly secret: Secret };

const shop = shippedShop();

/** The header of a practice on a tree, and what it hides. */
export function practiceOn(
  tree: Tree,
  { seed, ...wish }: { readonly seed: string } & Partial<Omit<Wish, 'salt'>>,
): Begun {
  const vehicle = { name: 'Practice vehicle', facts: {} };
  const salt = saltOf(seed, tree.id, sha256);
  const hidden = hideFault(asWalked(tree, vehicle), { hard: false, causes: [], ...wish, salt });
  if (hidden.kind === 'bad') throw new Error(hidden.problems[0]?.message ?? tree.id);
  const practice = { commitment: commitmentOf(hidden.value, sha256) };
  const about = { tree, shop, vehicle, practice, who: 'JB', conditions: {}, units: 'us' as const };
  return { header: newHeader(about, stampAt(0).at), secret: hidden.value };
}
