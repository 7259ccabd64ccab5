import { at } from '../../at.ts';
import { sum } from '../../sum.ts';
import type { Check, Tree } from '../../tree/model.ts';
import { rowsOfCheck } from './model.ts';

/** Suspects that stand together. */
type Side = {
  /** The results that speak for them, healthiest first. */
  readonly results: readonly string[];
  /** Those of these results that one of them is worth being seen by: `worthSeeing`. */
  readonly told: readonly string[];
  /** The surest first. */
  readonly suspects: readonly string[];
};

/** What a check would part: at least two sides, the one with the surest suspect first, and who shows on no side. */
export type Parting = {
  readonly sides: readonly Side[];
  readonly eitherWay: readonly string[];
};

/** A suspect by its id, with its chance now. */
export type Weighed = readonly [id: string, chance: number];

/**
 * A cause stands on a side that it alone would show at least twice as often as all else together: so
 * any two on different sides are parted two to one, whichever of the two is seen.
 */
const stands = 2 / 3;

/** A result that a cause shows on fewer vehicles than this is not told as its sign. */
const worthSeeing = 0.1;

/**
 * What the results of a check would part its suspects into. Results stand in order of degree, so a
 * side is a run of them. Of all ways to cut the list that one counts which parts the most pairs of
 * suspects, each pair by its chances; the fewest sides where several do.
 * @param suspects those worth showing, the surest first; `unlisted` may be among them
 * @returns undefined where no cut puts suspects on two sides
 */
export function partedBy(
  tree: Tree,
  id: string,
  suspects: readonly Weighed[],
): Parting | undefined {
  const check = tree.checks[id];
  if (check === undefined) throw new RangeError(`the tree has no check ${id}`);
  const shares = sharesOf(tree, id, suspects);
  let best: { readonly ends: readonly number[]; readonly parted: number } | undefined;
  for (const ends of cuts(check.results.length)) {
    const parted = pairsParted(placed(shares, ends), suspects, ends.length);
    if (parted > (best?.parted ?? 0) + 1e-9) best = { ends, parted };
  }
  return best && partingOf({ check, suspects, shares }, best.ends);
}

/** By suspect: the chance of each result on a vehicle with that cause alone. */
function sharesOf(tree: Tree, id: string, suspects: readonly Weighed[]): readonly number[][] {
  const { background, links } = rowsOfCheck(
    tree,
    id,
    suspects.map(([cause]) => cause),
  );
  return links.map((link) =>
    background.map((_, result) => {
      const upTo = (last: number): number =>
        last < 0 ? 0 : at(background, last) * (link === undefined ? 1 : at(link, last));
      return upTo(result) - upTo(result - 1);
    }),
  );
}

/** Every way to cut a list of results into runs, as the ends of the runs; those with few runs first. */
function cuts(results: number): readonly (readonly number[])[] {
  const all = Array.from({ length: 2 ** (results - 1) }, (_, mask) => [
    ...Array.from({ length: results - 1 }, (__, place) => place + 1).filter(
      (end) => (mask & (1 << (end - 1))) !== 0,
    ),
    results,
  ]);
  return all.toSorted((one, other) => one.length - other.length);
}

/** By suspect: the run that it stands in, or -1. */
const placed = (shares: readonly number[][], ends: readonly number[]): readonly number[] =>
  shares.map((row) =>
    ends.findIndex((end, run) => sum(row.slice(ends[run - 1] ?? 0, end)) >= stands),
  );

/** The chances of all pairs of suspects on different sides. */
function pairsParted(
  places: readonly number[],
  suspects: readonly Weighed[],
  runs: number,
): number {
  const weights = Array.from({ length: runs }, (_, run) =>
    sum(suspects.filter((__, index) => places[index] === run).map(([, chance]) => chance)),
  );
  const all = sum(weights);
  return sum(weights.map((weight) => weight * (all - weight)));
}

type Shown = {
  readonly check: Check;
  readonly suspects: readonly Weighed[];
  readonly shares: readonly number[][];
};

function partingOf({ check, suspects, shares }: Shown, ends: readonly number[]): Parting {
  const places = placed(shares, ends);
  const standing = (run: number) =>
    suspects.flatMap((_, index) => (places[index] === run ? [index] : []));
  const idsOf = (indexes: readonly number[]) => indexes.map((index) => at(suspects, index)[0]);
  const sideOf = (run: number): Side => {
    const there = standing(run);
    const from = ends[run - 1] ?? 0;
    const results = check.results.slice(from, ends[run]).map(({ id }) => id);
    const isTold = (result: number) =>
      there.some((index) => at(at(shares, index), from + result) >= worthSeeing);
    return {
      results,
      told: results.filter((_, result) => isTold(result)),
      suspects: idsOf(there),
    };
  };
  const runs = [...new Set(places.filter((run) => run >= 0))];
  return { sides: runs.map(sideOf), eitherWay: idsOf(standing(-1)) };
}
