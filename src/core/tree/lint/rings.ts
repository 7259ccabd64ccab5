import type { Tell } from '../../problem.ts';
import type { Tree } from '../model.ts';
import { parseNext } from '../way/next.ts';

/** A check must come before another: since that waits for it, or since it leads there alone. */
type Before = { readonly check: string; readonly waits: boolean };

/**
 * Checks that wait for one another: by `after`, or since the only way to the one awaited leads from
 * the one that waits. Each ring is told once.
 */
export function lintRings(tree: Tree, tell: Tell): void {
  const told = new Set<string>();
  for (const id of Object.keys(tree.checks)) {
    const ring = ringOf(tree, id);
    const name = ring?.toSorted().join(' ');
    if (ring === undefined || name === undefined || told.has(name)) continue;
    told.add(name);
    tell({
      code: 'after-ring',
      path: `checks.${id}.after`,
      value: ring.join(', '),
      message: `These wait for one another: ${[...ring, id].join(', ')}.`,
      mend: 'Take one of the "after" out: the check that comes first on the way waits for none.',
    });
  }
}

/** The ring through this check that begins with its own `after`. */
function ringOf(tree: Tree, id: string): readonly string[] | undefined {
  const seen = new Set<string>();
  const walk = (check: string, route: readonly string[]): readonly string[] | undefined => {
    for (const before of beforeOf(tree, check)) {
      if (route.length === 0 && !before.waits) continue;
      if (before.check === id) return [...route, check];
      if (seen.has(before.check)) continue;
      seen.add(before.check);
      const found = walk(before.check, [...route, check]);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return walk(id, []);
}

function beforeOf(tree: Tree, id: string): readonly Before[] {
  const waits = Object.keys(tree.checks[id]?.after ?? {}).map((check) => ({ check, waits: true }));
  const leaders = Object.entries(tree.checks).flatMap(([check, { results }]) =>
    results.some(({ next }) => {
      const to = next === undefined ? undefined : parseNext(next);
      return to?.kind === 'check' && to.check === id;
    })
      ? [check]
      : [],
  );
  const begins = [tree.start, tree.complaint.confirm, ...tree.baseline].includes(id);
  const [only] = leaders;
  return leaders.length === 1 && only !== undefined && !begins
    ? [...waits, { check: only, waits: false }]
    : waits;
}
