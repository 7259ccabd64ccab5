/** A published table: places in rising order, each with its value. */
export type Table = readonly (readonly [place: number, value: number])[];

/**
 * The value at a place of a table, straight between its rows and never beyond its ends. A place of
 * the table gives the printed value to the last digit. RangeError outside, naming place and range.
 */
export function lookUp(table: Table, place: number, name: string): number {
  const upper = table.findIndex(([at]) => at >= place);
  const [first, last] = [rowAt(table, 0)[0], rowAt(table, table.length - 1)[0]];
  if (upper < 0 || !(place >= first)) {
    throw new RangeError(`${name} ${place} is outside ${first} to ${last}.`);
  }
  const [high, above] = rowAt(table, upper);
  if (high === place) return above;
  const [low, below] = rowAt(table, upper - 1);
  return below + ((above - below) * (place - low)) / (high - low);
}

function rowAt(table: Table, index: number): Table[number] {
  const row = table[index];
  if (row === undefined) throw new Error(`a table has no row ${index}`);
  return row;
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
