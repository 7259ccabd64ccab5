import type { Problem } from '../problem.ts';
import type { Facts } from '../tree/facts.ts';
import { exists } from '../tree/fit.ts';
import { limitOf } from '../tree/limits.ts';
import type { Check, Tree } from '../tree/model.ts';
import { checkFeed, checkFeedUse } from './check-feed.ts';
import { makeEvidence, type RowsOf } from './evidence.ts';
import { feedFor } from './path.ts';

/**
 * A tree with the evidence of its feed path worked out: each check that reads the path and has no
 * rows of its own gets background and points from the circuit. Rows typed by hand stand.
 */
export function fillTree(tree: Tree, facts: Facts): Tree {
  if (tree.feed === undefined) return tree;
  const feed = feedFor(tree.feed, (when) => exists(when, facts));
  const evidence = makeEvidence();
  const checks = Object.fromEntries(
    Object.entries(tree.checks).map(([id, check]) => [
      id,
      fillCheck({ ...tree, feed }, check, evidence),
    ]),
  );
  return { ...tree, feed, checks };
}

function fillCheck(tree: Tree, check: Check, evidence: RowsOf): Check {
  if (tree.feed === undefined || check.feed === undefined || check.background !== undefined)
    return check;
  const bands = check.results.map(({ from, below }) => ({
    ...(from !== undefined && { from: limitOf(from) }),
    ...(below !== undefined && { below: limitOf(below) }),
  }));
  const worked = evidence(tree.feed, check.feed, bands, tree.causes);
  // Names were held against the feed block when the file was read: see feedProblems.
  if (worked.kind === 'bad') throw new Error(worked.problems[0]?.message ?? 'feed');
  const { background, points } = worked.value;
  const rows: Record<string, number[]> = Object.fromEntries(
    Object.entries(points).map(([cause, row]) => [cause, [...row]]),
  );
  return { ...check, background: [...background], points: { ...rows, ...check.points } };
}

/** What is wrong with a tree's feed path and with the checks and causes that name its parts. */
export function feedProblems(tree: Tree, file: string): readonly Problem[] {
  const { feed } = tree;
  const placed = Object.entries(tree.checks).filter(([, check]) => check.feed !== undefined);
  if (feed === undefined)
    return placed.map(([id]) => ({
      code: 'feed-missing',
      file,
      path: `checks.${id}.feed`,
      message: 'The check reads a feed path, but the tree has none.',
      mend: 'Add a feed block, or take "feed" out of the check.',
    }));
  const uses = placed.flatMap(([id, check]) =>
    check.feed === undefined
      ? []
      : checkFeedUse(feed, check.feed, {}).map((one) => ({ ...one, path: `checks.${id}.feed` })),
  );
  const causes = checkFeedUse(
    feed,
    { station: feed.battery.positive, load: [], reads: 'volts' },
    tree.causes,
  );
  return [...checkFeed(feed), ...uses, ...causes].map((problem) => ({ ...problem, file }));
}
