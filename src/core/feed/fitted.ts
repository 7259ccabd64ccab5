import type { When } from '../tree/basics.ts';
import type { Facts } from '../tree/facts.ts';
import type { Feed } from '../tree/feed-model.ts';
import { exists } from '../tree/fit.ts';
import { feedFor } from './path.ts';

/** The path that a check reads, by the facts that the check itself is for. */
export type Paths = (check?: When) => Feed;

/**
 * The paths of one vehicle. Where nobody knows a fact that parts of the path hang on, a check is read
 * on the path that it is for, and else on that of the first value the path names: two ways that
 * exclude one another would stand side by side otherwise, and each would hide what is wrong with
 * the other. Each path is made once: what is worked out is kept with it.
 */
export function pathsOf(feed: Feed, facts: Facts): Paths {
  const parts = [...feed.spans, ...feed.loads, ...Object.values(feed.stations)];
  const named = parts.flatMap(({ when }) => Object.entries(when ?? {}));
  const usual = Object.fromEntries(
    named.toReversed().map(([fact, values]) => [fact, firstOf(values)]),
  );
  const made = new Map<string, Feed>();
  return (check = {}) => {
    const meant = Object.entries(check).map(([fact, values]) => [fact, firstOf(values)] as const);
    const known = { ...usual, ...Object.fromEntries(meant), ...facts };
    const key = JSON.stringify(Object.keys(usual).map((fact) => known[fact]));
    const path = made.get(key) ?? feedFor(feed, (when) => exists(when, known));
    made.set(key, path);
    return path;
  };
}

const firstOf = (values: string | readonly string[]): string => [values].flat()[0] ?? '';
