import { madeCheck } from './own/made-check.ts';
import { at } from '../at.ts';
import { unlisted, type Tree } from './model.ts';
import type { Done } from './way/known.ts';

/**
 * Chance that an open look at a part misses its fault, where no check of the tree looks at that very
 * part: common practice, no source.
 */
const usuallyMissed = 0.1;

/** Chance that a sound part is taken for a faulty one by an open look: the floor of every row. */
const leastMistaken = 0.005;

/** What an open look shows: the part is sound, as far as can be seen, or it is the cause. */
export const notThis = 'not-this';
const thisIsIt = 'this-is-it';

const prefix = 'open-look-at-';

/** The id of the check that an open look at a cause's very part is. */
export const lookAt = (cause: string): string => `${prefix}${cause}`;

/** Whether a check is none of the tree's own, but an open look at a cause that was named. */
export const isLook = (check: string): boolean => check.startsWith(prefix);

/**
 * How often an open look at a cause misses it: as often as the surest check of the tree that looks at
 * its very part, else as is usual.
 */
export function missedByLook({ checks }: Tree, cause: string): number {
  const rows = Object.values(checks).flatMap((check) =>
    check['looks-at']?.includes(cause) === true && Object.hasOwn(check.points, cause)
      ? [at(check.points[cause] ?? [], 0)]
      : [],
  );
  return rows.length === 0 ? usuallyMissed : Math.max(leastMistaken, Math.min(...rows));
}

/** A name inside a sentence; one in capitals keeps them. */
const lowered = (name: string): string =>
  name.replace(/^[A-Z](?=[a-z])/, (letter) => letter.toLowerCase());

/** A tree with an open look at one of its causes among its checks; it tells of that cause alone. */
export function withLook(tree: Tree, cause: string): Tree {
  const found = Object.hasOwn(tree.causes, cause) ? tree.causes[cause] : undefined;
  const id = lookAt(cause);
  if (found === undefined || Object.hasOwn(tree.checks, id)) return tree;
  const missed = missedByLook(tree, cause);
  const sound = [1 - leastMistaken, leastMistaken];
  const thing = found.short ?? lowered(found.name);
  // What getting there takes is told by the events around it: nobody is sent to make this check.
  const look = madeCheck({
    kind: 'look',
    ask: `An open look at ${thing}`,
    told: thing,
    results: [
      { id: notThis, label: 'it was not that', told: 'it was not that' },
      { id: thisIsIt, label: 'it was that', told: 'it was that' },
    ],
    background: sound,
    points: { [cause]: [missed, 1 - missed], [unlisted]: sound },
  });
  return { ...tree, checks: { ...tree.checks, [id]: look } };
}

/**
 * Whether a cause was looked at and was not that, and nothing found since points at it: until then
 * nothing names it again. The complaint's own test points at everything, and so at nothing here.
 */
export function isLookedAway(tree: Tree, done: readonly Done[], cause: string): boolean {
  const last = done.findLastIndex((one) => one.kind === 'shown' && one.check === lookAt(cause));
  const pointsAtIt = (one: Done): boolean =>
    one.kind === 'shown' &&
    one.result > 0 &&
    one.check !== tree.complaint.confirm &&
    Object.hasOwn(tree.checks[one.check]?.points ?? {}, cause);
  return last >= 0 && !done.slice(last + 1).some(pointsAtIt);
}
