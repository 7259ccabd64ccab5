import type { Problem } from '../problem.ts';
import type { Facts } from '../tree/facts.ts';
import { limitOf } from '../tree/limits.ts';
import type { Check, Tree } from '../tree/model.ts';
import type { CheckFeed, Feed } from '../tree/feed-model.ts';
import { checkFeed, checkFeedUse, switchesOf } from './check-feed.ts';
import { makeEvidence, type RowsOf } from './evidence.ts';
import { pathsOf } from './fitted.ts';
import { spanBetween } from './path.ts';

/**
 * A tree with the evidence of its feed path worked out: each check that reads the path and has no
 * rows of its own gets background and points from the circuit. Rows typed by hand stand.
 */
export function fillTree(tree: Tree, facts: Facts): Tree {
  if (tree.feed === undefined) return tree;
  const paths = pathsOf(tree.feed, facts);
  const evidence = makeEvidence();
  const checks = Object.fromEntries(
    Object.entries(tree.checks).map(([id, check]) => [
      id,
      fillCheck({ ...tree, feed: paths(check.when) }, check, evidence),
    ]),
  );
  const feed = paths();
  return { ...tree, feed, checks: placedIn(feed, checks) };
}

const placedIn = (feed: Feed, checks: Tree['checks']): Tree['checks'] =>
  Object.fromEntries(Object.entries(checks).map(([id, check]) => [id, placed(feed, check)]));

/** A check without its place where the path that is drawn has none such: its rows stand all the same. */
function placed(feed: Feed, check: Check): Check {
  const { feed: read, ...rest } = check;
  return read === undefined || isOn(feed, read) ? check : rest;
}

const isOn = ({ stations }: Feed, { station, against }: CheckFeed): boolean =>
  [station, against].every((id) => id === undefined || Object.hasOwn(stations, id));

function fillCheck(tree: Tree, check: Check, evidence: RowsOf): Check {
  const { feed } = tree;
  if (feed === undefined || check.feed === undefined || check.background !== undefined)
    return check;
  if (!isOn(feed, check.feed)) throw new Error(`the path has no place for "${check.ask}"`);
  const bands = check.results.map(({ from, below }) => ({
    ...(from !== undefined && { from: limitOf(from) }),
    ...(below !== undefined && { below: limitOf(below) }),
  }));
  const on = switchesOf(feed);
  const load = check.feed.load.filter((id) => on.has(id));
  const causes = Object.fromEntries(
    Object.entries(tree.causes).filter(
      ([, { span }]) => span === undefined || spanBetween(feed, span) !== undefined,
    ),
  );
  const worked = evidence(feed, { ...check.feed, load }, bands, causes);
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
