import type { Problem } from '../../core/problem.ts';
import type { Tree } from '../../core/tree/model.ts';
import type { Shop } from '../../core/tree/shop.ts';

/** The trees to choose from, with what is wrong with those that could not be read. */
export type LoadedTrees = {
  readonly trees: readonly Tree[];
  readonly shop: Shop;
  readonly problems: readonly Problem[];
};
