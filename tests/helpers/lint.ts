import type { Tell } from '../../src/core/problem.ts';
import type { Check, Tree } from '../../src/core/tree/model.ts';
import { smallTree } from './tree.ts';

/** What a rule tells of a tree: `code path`, in its order. */
export function toldBy(rule: (tree: Tree, tell: Tell) => void, tree: Tree): readonly string[] {
  const told: string[] = [];
  rule(tree, ({ code, path = '' }) => told.push(`${code} ${path}`.trim()));
  return told;
}

/** The small tree with one of its checks changed. */
export function withCheck(
  id: 'lamp' | 'look' | 'volts',
  change: Partial<Check>,
  tree: Tree = smallTree(),
): Tree {
  const check = tree.checks[id];
  if (check === undefined) throw new Error(`no check ${id}`);
  return { ...tree, checks: { ...tree.checks, [id]: { ...check, ...change } } };
}

/** The small tree with one of its causes' repairs changed. */
export function withRepair(
  id: 'fuse' | 'wire',
  change: Partial<Tree['causes'][string]['repair']>,
  tree: Tree = smallTree(),
): Tree {
  const cause = tree.causes[id];
  if (cause === undefined) throw new Error(`no cause ${id}`);
  const repair = { ...cause.repair, ...change };
  return { ...tree, causes: { ...tree.causes, [id]: { ...cause, repair } } };
}
