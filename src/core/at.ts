/** The entry of a list that must be there; throws a RangeError where it is not. */
export function at<T>(list: ArrayLike<T | undefined>, index: number): T {
  const entry = list[index];
  if (entry === undefined)
    throw new RangeError(`The list of ${list.length} has no entry ${index}.`);
  return entry;
}
