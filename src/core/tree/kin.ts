import type { Check, Tree } from './model.ts';

/** Whether two checks show one and the same thing: they share a `same` name and its results. */
export const showsSame = (one: Check, other: Check): boolean =>
  one === other ||
  (one.same !== undefined &&
    one.same === other.same &&
    one.results.length === other.results.length);

/** Checks that show the same thing as this one: itself, and those of its `same` name. */
export function kinOf({ checks }: Pick<Tree, 'checks'>, id: string): readonly string[] {
  const check = checks[id];
  if (check === undefined) return [];
  return Object.keys(checks).filter((other) => {
    const one = checks[other];
    return one !== undefined && showsSame(check, one);
  });
}
