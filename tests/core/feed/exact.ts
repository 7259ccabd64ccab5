import type { Network } from '../../../src/core/feed/network.ts';

/** Numbers here are whole multiples of 2^-240: about 70 digits, more than any circuit needs. */
const places = 240n;
const one = 1n << places;

/** The exact value of a double, down to 2^-240. */
function fixed(amount: number): bigint {
  let [rest, shift] = [amount, 0n];
  for (; !Number.isInteger(rest); rest *= 2) shift += 1n;
  return (BigInt(rest) << places) >> shift;
}

const double = (amount: bigint): number => Number(amount >> (places - 100n)) / 2 ** 100;
const times = (first: bigint, second: bigint): bigint => (first * second) >> places;
const over = (first: bigint, second: bigint): bigint => (first << places) / second;
const size = (amount: bigint): bigint => (amount < 0n ? -amount : amount);

/**
 * The same question answered another way: full modified nodal analysis with a row for every source,
 * and Gauss elimination in long whole numbers. Written apart from the solver under test.
 */
export function exactVolts({ reference, elements }: Network): ReadonlyMap<string, number> {
  const names = [...new Set(elements.flatMap(({ from, to }) => [from, to]))].filter(
    (name) => name !== reference,
  );
  const at = new Map(names.map((name, row): [string, number] => [name, row]));
  const sources = elements.filter(({ kind }) => kind === 'source');
  const last = names.length + sources.length;
  const rows = Array.from({ length: last }, () => Array.from({ length: last + 1 }, () => 0n));
  const put = (row: number | undefined, column: number | undefined, amount: bigint): void => {
    if (row !== undefined && column !== undefined) rows[row]![column]! += amount;
  };
  for (const part of elements) {
    const [from, to] = [at.get(part.from), at.get(part.to)];
    const conduct = (ohms: number): void => {
      const siemens = over(one, fixed(ohms));
      put(from, from, siemens);
      put(to, to, siemens);
      put(from, to, -siemens);
      put(to, from, -siemens);
    };
    if (part.kind === 'resistor') conduct(part.ohms);
    if (part.kind === 'current') {
      put(from, last, -fixed(part.amps));
      put(to, last, fixed(part.amps));
    }
    if (part.kind !== 'source') continue;
    const row = names.length + sources.indexOf(part);
    put(from, row, one);
    put(to, row, -one);
    put(row, from, one);
    put(row, to, -one);
    put(row, row, -fixed(part.ohms));
    put(row, last, fixed(part.volts));
  }
  const answer = eliminated(rows);
  return new Map(names.map((name, row): [string, number] => [name, double(answer[row]!)]));
}

function eliminated(rows: bigint[][]): readonly bigint[] {
  const last = rows.length;
  for (let column = 0; column < last; column += 1) {
    let pivot = column;
    for (let row = column; row < last; row += 1)
      if (size(rows[row]![column]!) > size(rows[pivot]![column]!)) pivot = row;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = 0; row < last; row += 1) {
      if (row === column || rows[row]![column] === 0n) continue;
      const factor = over(rows[row]![column]!, rows[column]![column]!);
      for (let other = column; other <= last; other += 1)
        rows[row]![other]! -= times(factor, rows[column]![other]!);
    }
  }
  return rows.map((row, at) => over(row[last]!, row[at]!));
}
