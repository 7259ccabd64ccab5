import { at } from '../at.ts';
import { kinOf } from './kin.ts';
import type { Cause, Check, Tree } from './model.ts';

/** Chance that a repair brings a fault of its own: common practice, no source. */
export const broughtPrior = 0.02;

/** Minutes of going over the work of a repair: common practice, no source. */
const goOverMinutes = 15;

/** Chance that such a fault misses the check it was seen in: the floor of every link. */
const least = 0.005;

const prefix = 'brought-by-repair-';

/** The id of the fault that the session's repair of that number may have brought. */
export const broughtBy = (repair: number): string => `${prefix}${repair}`;

/** Whether a cause is no cause of the tree's own, but a fault that a repair may have brought. */
export const isBrought = (cause: string): boolean => cause.startsWith(prefix);

export type Bringing = {
  /** Which repair of the session brought it, counted from 1, and what that mended. */
  readonly repair: number;
  readonly repaired: string;
  /** The finding that got worse. */
  readonly found: { readonly check: string; readonly result: string };
};

/**
 * A tree with a fault among its causes that came with a repair. It shows surely in the check that
 * got worse, as that was found; one in two shows the complaint as well (common practice, no source).
 */
export function withBrought(tree: Tree, { repair, repaired, found }: Bringing): Tree {
  const id = broughtBy(repair);
  const shown = tree.checks[found.check]?.results.findIndex((one) => one.id === found.result) ?? -1;
  if (shown < 1) return tree;
  const kin = kinOf(tree, found.check);
  const { confirm } = tree.complaint;
  const checks = Object.entries(tree.checks).map(([name, check]): [string, Check] => {
    if (kin.includes(name)) return [name, withRow(check, id, rowOf(check, shown, least))];
    const halves = name === confirm && !Object.hasOwn(check.points, id);
    return [
      name,
      halves ? withRow(check, id, rowOf(check, check.results.length - 1, 1 / 2)) : check,
    ];
  });
  return {
    ...tree,
    causes: { ...tree.causes, [id]: tree.causes[id] ?? faultOf(tree.causes[repaired], kin) },
    checks: Object.fromEntries(checks),
  };
}

const withRow = (check: Check, cause: string, row: number[]): Check => ({
  ...check,
  points: { ...check.points, [cause]: row },
});

/** A row that shows one result, and the healthy one with the chance `missed`. */
const rowOf = ({ results }: Check, shown: number, missed: number): number[] =>
  results.map((_, index) => (index === 0 ? missed : index === shown ? 1 - missed : 0));

/** The work is gone over as it was done: behind the same covers, under the same cautions. */
function faultOf(repaired: Cause | undefined, kin: readonly string[]): Cause {
  const { access = [], standing = {}, cautions = [] } = repaired?.repair ?? {};
  return {
    name: 'Something that came with the repair',
    short: 'something that came with the repair',
    odds: 100 * broughtPrior,
    repair: {
      do: [
        'Go over all that was touched, moved or unplugged for the repair.',
        'Put right what is not as it was.',
      ],
      minutes: goOverMinutes,
      access,
      standing,
      cautions,
      tools: [],
      parts: [],
      part: 'none',
      // oxlint-disable-next-line unicorn/no-thenable -- the tree format's word, never awaited
      then: [at(kin, 0)],
    },
  };
}
