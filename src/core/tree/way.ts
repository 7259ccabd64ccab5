import type { Tree } from './model.ts';
import { parseNext, type Next } from './next.ts';

/** What is known of a check on the way: its result, by place; that it was passed over; or nothing. */
export type Known = number | 'passed' | undefined;

/** Where the way leads, and the reason that the tree gives for it. */
export type NextLink = { readonly next: Next; readonly reason?: string | undefined };

/** Where a check leads; one that was passed over goes on as the healthiest result would, to a check. */
export function leadFrom(
  { checks }: Tree,
  check: string,
  known: number | 'passed',
): NextLink | undefined {
  const result = checks[check]?.results[known === 'passed' ? 0 : known];
  if (result?.next === undefined) return undefined;
  const next = parseNext(result.next);
  if (known !== 'passed') return { next, reason: result.reason };
  return next.kind === 'check' ? { next } : undefined;
}

/**
 * Follows the tree's own way past every check that is known, to the first that is not, or to where
 * it ends.
 * @returns undefined where the way gives out: no `next`, a check the tree has not, or a circle
 */
export function along(
  tree: Tree,
  from: NextLink | undefined,
  knownOf: (check: string) => Known,
): NextLink | undefined {
  const passed = new Set<string>();
  let lead = from;
  while (lead?.next.kind === 'check') {
    const { check } = lead.next;
    if (!Object.hasOwn(tree.checks, check) || passed.has(check)) return undefined;
    const known = knownOf(check);
    if (known === undefined) return lead;
    passed.add(check);
    lead = leadFrom(tree, check, known);
  }
  return lead;
}
