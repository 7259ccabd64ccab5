import { fillTree } from '../../feed/fill.ts';
import { fitTree } from '../../tree/fit.ts';
import { byTheBook } from '../../tree/limits.ts';
import type { Tree } from '../../tree/model.ts';
import { settle, withLabels } from '../../tree/written/settle.ts';
import type { Written } from '../../tree/written/written.ts';
import type { Header } from './header.ts';

/** A header's tree, settled once: the same header is folded again after every event. */
const settled = new WeakMap<Written, Tree>();

/** The tree that a header holds. */
export function treeOf(written: Written): Tree {
  const tree = settled.get(written) ?? settle(written, {});
  settled.set(written, tree);
  return tree;
}

/**
 * A tree as this vehicle has it, evidence of its feed path included. Kept as long as the tree itself
 * lives, for the vehicles met last, since the circuit takes long to work out: the same tree and facts
 * always give the same.
 */
const walked = new WeakMap<Tree, Map<string, Tree>>();

/** Vehicles of which a tree is kept: a shop meets the same few again. */
const mostKept = 24;

export function asWalked(
  tree: Tree,
  { facts, sheet = {} }: Pick<Header['vehicle'], 'facts' | 'sheet'>,
): Tree {
  const key = JSON.stringify([facts, sheet]);
  const kept = walked.get(tree) ?? new Map<string, Tree>();
  const known = kept.get(key);
  if (known !== undefined) return known;
  const made = fillTree(withLabels(byTheBook(fitTree(tree, facts), sheet)), facts);
  const [oldest] = kept.keys();
  if (kept.size >= mostKept && oldest !== undefined) kept.delete(oldest);
  walked.set(tree, kept.set(key, made));
  return made;
}
