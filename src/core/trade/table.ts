/** A published table: places in rising order, each with its value. */
export type Table = readonly (readonly [place: number, value: number])[];

/**
 * The value at a place of a table, straight between its rows and never beyond its ends. A place of
 * the table gives the printed value to the last digit. RangeError outside, naming place and range.
 */
export function lookUp(table: Table, place: number, name: string): number {
  const upper = table.findIndex(([at]) => at >= place);
  const [first = 0] = table[0] ?? [];
  const [last = 0] = table.at(-1) ?? [];
  if (upper < 0 || !(place >= first)) {
    throw new RangeError(`${name} ${place} is outside ${first} to ${last}.`);
  }
  const [high, above] = table[upper] ?? [0, 0];
  if (high === place) return above;
  const [low, below] = table[upper - 1] ?? [0, 0];
  return below + ((above - below) * (place - low)) / (high - low);
}

/** The table read the other way round; its values must rise or fall all the way. */
export function turned(table: Table): Table {
  return table
    .map(([place, value]) => [value, place] as const)
    .toSorted(([left], [right]) => left - right);
}

/** As lookUp, straight on a logarithmic scale: for values that fall by a like factor each step. */
export function lookUpLog(table: Table, place: number, name: string): number {
  const exact = table.find(([at]) => at === place);
  if (exact !== undefined) return exact[1];
  const logs = table.map(([at, value]) => [at, Math.log(value)] as const);
  return Math.exp(lookUp(logs, place, name));
}
