import { isLookedAway } from '../looked.ts';
import type { Tree } from '../model.ts';
import { gatesOf, gatesOfRepair, isShut, type Gate } from './gates.ts';
import { knownAfter, knownAtEnds, type Done, type Known } from './known.ts';
import { parseNext } from './next.ts';

/** Where a job stands on a tree. */
export type Way = {
  readonly tree: Tree;
  readonly known: (check: string) => Known;
  /** The same with every finding at either of its ends, where one may be several. */
  readonly atEnds: readonly ((check: string) => Known)[];
  /** Causes that were repaired. */
  readonly mended: readonly string[];
  /** Whether a cause was looked at and was not that: the way does not name it again. */
  readonly lookedAway: (cause: string) => boolean;
};

export function wayAfter(tree: Tree, done: readonly Done[]): Way {
  const mended = done.flatMap((one) => (one.kind === 'repaired' ? [one.cause] : []));
  const lookedAway = (cause: string): boolean => isLookedAway(tree, done, cause);
  const [known, atEnds] = [knownAfter(tree, done), knownAtEnds(tree, done)];
  return { tree, known, atEnds, mended, lookedAway };
}

/** What stands before a step: a check to be made first, or a gate that what was found keeps shut. */
export type Hold =
  | { readonly kind: 'ask'; readonly check: string }
  | { readonly kind: 'shut'; readonly gate: Gate };

/** @param step a check, or `cause:ID` for its repair */
export function holdBefore(
  way: Way,
  step: string,
  waiting: readonly string[] = [],
): Hold | undefined {
  const { tree, known, atEnds } = way;
  const next = parseNext(step);
  const gates = next.kind === 'cause' ? gatesOfRepair(tree, next.cause) : gatesOf(tree, step);
  const [gate] = gates.filter((one) => isShut(tree, one, [known, ...atEnds]));
  if (gate === undefined) return undefined;
  if (known(gate.check) !== undefined || [...waiting, step].includes(gate.check))
    return { kind: 'shut', gate };
  return holdBefore(way, gate.check, [...waiting, step]) ?? { kind: 'ask', check: gate.check };
}
