/**
 * Where a rising or falling function crosses nothing between two places, by halving: 200 halvings
 * leave no more than the last digit. RangeError if it does not cross there.
 */
export function crossing(of: (place: number) => number, low: number, high: number): number {
  const start = of(low);
  if (start === 0) return low;
  if (!(start * of(high) <= 0)) {
    throw new RangeError(`there is no answer between ${low} and ${high}.`);
  }
  let [left, right] = [low, high];
  for (let round = 0; round < 200; round += 1) {
    const middle = (left + right) / 2;
    if (of(middle) * start > 0) left = middle;
    else right = middle;
  }
  return (left + right) / 2;
}
