/** A record with each of its values changed, under the same keys. */
export const mapValues = <T, U>(
  from: Readonly<Record<string, T>>,
  change: (one: T, key: string) => U,
): Record<string, U> =>
  Object.fromEntries(Object.entries(from).map(([key, one]) => [key, change(one, key)]));
