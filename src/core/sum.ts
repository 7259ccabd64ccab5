/** The sum of some numbers, in their order. */
export function sum(values: ArrayLike<number>): number {
  let all = 0;
  for (let index = 0; index < values.length; index += 1) all += values[index] ?? 0;
  return all;
}
