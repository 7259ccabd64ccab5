/** The entry of a list that must be there; throws a RangeError where it is not. */
export function at<T>(list: ArrayLike<T | undefined>, index: number): T {
  const entry = list[index];
  if (entry === undefined)
    throw new RangeError(`The list of ${list.length} has no entry ${index}.`);
  return entry;
}

/** The same of real numbers alone: one function for one kind of list is what keeps an innermost loop quick. */
export function realAt(list: Float64Array, index: number): number {
  const entry = list[index];
  if (entry === undefined)
    throw new RangeError(`The list of ${list.length} has no entry ${index}.`);
  return entry;
}

/** The same of whole numbers alone. */
export function wholeAt(list: Int32Array, index: number): number {
  const entry = list[index];
  if (entry === undefined)
    throw new RangeError(`The list of ${list.length} has no entry ${index}.`);
  return entry;
}
