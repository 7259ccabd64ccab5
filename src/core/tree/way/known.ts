import { kinOf } from '../kin.ts';
import type { Tree } from '../model.ts';

/** One thing done on a tree. A way is worked out from these, in the order of doing, and nothing else. */
export type Done =
  /** What a check showed, as a place among its results. A proof is shown by the complaint's own test. */
  | {
      readonly kind: 'shown';
      readonly check: string;
      readonly result: number;
      /** Its ends, where it may be one of several: a gate is open only if all of them open it. */
      readonly ends?: readonly [number, number];
    }
  | { readonly kind: 'passed'; readonly check: string }
  | { readonly kind: 'repaired'; readonly cause: string }
  /** This tree is walked from here on; what came before was done on another complaint's. */
  | { readonly kind: 'begun' };

/** What is known of a check now: its result, by place; that it was passed over; or nothing. */
export type Known = number | 'passed' | undefined;

/** Whether mending this cause may change what a check shows; a cause of no list may change anything. */
const touches = ({ causes, checks }: Tree, cause: string, check: string): boolean =>
  !Object.hasOwn(causes, cause) || Object.hasOwn(checks[check]?.points ?? {}, cause);

/**
 * What is known of each check after all that was done: by its own last result, or by a later one of
 * a check that shows the same. The complaint's own test is stale after any repair; another check is
 * where it showed something abnormal and a cause that it shows was mended since. What is stale is
 * not known: it is asked anew.
 */
export function knownAfter(tree: Tree, done: readonly Done[]): (check: string) => Known {
  const shown = new Map<string, { readonly at: number; readonly result: number }>();
  const passed = new Map<string, number>();
  const repairs: { readonly at: number; readonly cause: string }[] = [];
  done.forEach((one, at) => {
    if (one.kind === 'shown') shown.set(one.check, { at, result: one.result });
    if (one.kind === 'passed') passed.set(one.check, at);
    if (one.kind === 'repaired') repairs.push({ at, cause: one.cause });
  });
  return (check) => {
    const kin = kinOf(tree, check);
    const last = kin
      .flatMap((one) => shown.get(one) ?? [])
      .reduce<{ at: number; result: number } | undefined>(
        (latest, one) => (latest === undefined || one.at > latest.at ? one : latest),
        undefined,
      );
    const stale = repairs.findLast(
      ({ at, cause }) =>
        last !== undefined &&
        at > last.at &&
        (check === tree.complaint.confirm ||
          (last.result > 0 && kin.some((one) => touches(tree, cause, one)))),
    );
    if (last !== undefined && stale === undefined) return last.result;
    const passedAt = passed.get(check);
    return passedAt !== undefined && passedAt > (stale?.at ?? -1) ? 'passed' : undefined;
  };
}

/** The same with every finding that may be one of several at its one end, then at its other; else none. */
export function knownAtEnds(
  tree: Tree,
  done: readonly Done[],
): readonly ((check: string) => Known)[] {
  if (!done.some((one) => one.kind === 'shown' && one.ends !== undefined)) return [];
  return ([0, 1] as const).map((end) =>
    knownAfter(
      tree,
      done.map((one) =>
        one.kind === 'shown' ? { ...one, result: one.ends?.[end] ?? one.result } : one,
      ),
    ),
  );
}
