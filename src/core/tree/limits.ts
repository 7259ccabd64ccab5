import { convert } from '../trade/units/units.ts';
import type { BookLimit, Result, Tree } from './model.ts';

/** The figures of the vehicle's own book, by the name that trees use; each as it was read. */
type Sheet = Readonly<Record<string, { readonly value: number; readonly unit: string }>>;

/** The number a limit stands for: its own, or the general figure of one that the book may move. */
export const limitOf = (limit: number | BookLimit): number =>
  typeof limit === 'number' ? limit : limit.else;

/** The band of a result as two numbers; open ends are infinite. */
export function edgesOf({ from, below }: Pick<Result, 'from' | 'below'>): {
  readonly from: number;
  readonly below: number;
} {
  return {
    from: from === undefined ? -Infinity : limitOf(from),
    below: below === undefined ? Infinity : limitOf(below),
  };
}

/** Book figures that the limits of a result stand on. */
export const booksOf = ({ from, below }: Pick<Result, 'from' | 'below'>): readonly string[] =>
  [from, below].flatMap((limit) => (typeof limit === 'object' ? [limit.book] : []));

/** The numbers that the limits of a result stand for. */
export const limitsOf = ({ from, below }: Pick<Result, 'from' | 'below'>): readonly number[] =>
  [from, below].flatMap((limit) => (limit === undefined ? [] : [limitOf(limit)]));

/**
 * The tree judged by the vehicle's own book: each limit whose figure was read takes its number
 * from there, the others keep the general one.
 */
export function byTheBook(tree: Tree, sheet: Sheet): Tree {
  if (Object.keys(sheet).length === 0) return tree;
  const checks = Object.entries(tree.checks).map(([id, check]) => {
    const unit = check.reading?.unit;
    if (unit === undefined) return [id, check] as const;
    const moved = (limit: number | BookLimit): number | BookLimit =>
      typeof limit === 'number' ? limit : { ...limit, else: ownLimit(limit, sheet, unit) };
    const results = check.results.map((result) => ({
      ...result,
      ...(result.from !== undefined && { from: moved(result.from) }),
      ...(result.below !== undefined && { below: moved(result.below) }),
    }));
    return [id, { ...check, results }] as const;
  });
  return { ...tree, checks: Object.fromEntries(checks) };
}

/** `times` comes first, then `plus` and `minus`: "three quarters of the book, less 10". */
function ownLimit(limit: BookLimit, sheet: Sheet, unit: string): number {
  const read = Object.hasOwn(sheet, limit.book) ? sheet[limit.book] : undefined;
  if (read === undefined) return limit.else;
  const { times = 1, plus = 0, minus = 0 } = limit;
  return convert(read.value, read.unit, unit) * times + plus - minus;
}
