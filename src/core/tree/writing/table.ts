import { bad, firstOf, good, problemsOf, type Parsed, type Problem } from '../../problem.ts';
import { unlisted } from '../model.ts';
import { readAmount, readCell, showCell, varies } from './cells.ts';
import { printCsv, readCsv } from './csv.ts';

/** A tree's file of format 2, as it was read: only what the table holds is looked at. */
export type TreeFile = Readonly<Record<string, unknown>> & {
  readonly causes: Readonly<Record<string, Plain>>;
  readonly checks: Readonly<Record<string, Plain>>;
};
type Plain = Readonly<Record<string, unknown>>;

const soundRow = 'sound';
const heads = ['cause', 'name', 'odds', 'minutes'] as const;

const rowOf = (check: Plain): Plain => (check['shows-with'] ?? {}) as Plain;
const repairOf = (cause: Plain): Plain => cause['repair'] as Plain;
const resultsOf = (check: Plain): readonly string[] =>
  (check['results'] as readonly { readonly id: string }[]).map(({ id }) => id);

const nameOf = (cause: Plain = {}): string =>
  typeof cause['name'] === 'string' ? cause['name'] : '';

/** The value that a cell of the table stands for. */
function valueAt(file: TreeFile, row: string, column: string): unknown {
  const check = file.checks[column];
  const cause = file.causes[row];
  if (check !== undefined) return row === soundRow ? check['sound'] : rowOf(check)[row];
  if (column === 'odds') return row === unlisted ? file[unlisted] : cause?.['odds'];
  return column === 'minutes' && cause !== undefined ? repairOf(cause)['minutes'] : undefined;
}

/** The numbers of a tree as CSV: causes down, checks across, sound vehicles first. */
export function printTable(file: TreeFile): string {
  const checks = Object.keys(file.checks);
  const rows = [soundRow, ...Object.keys(file.causes), unlisted];
  return printCsv([
    [...heads, ...checks],
    ...rows.map((row) => [
      row,
      nameOf(file.causes[row]),
      ...['odds', 'minutes', ...checks].map((column) => showCell(valueAt(file, row, column))),
    ]),
  ]);
}

/**
 * A tree's file with the chances, odds and minutes of a table in it; a row or column that the table
 * has not stays as it is, an empty cell takes its chances out. Bad with every cell that cannot be read.
 */
export function withTable(file: TreeFile, csv: string): Parsed<TreeFile> {
  const [head, ...rows] = readCsv(csv) ?? [];
  if (head?.[0] !== heads[0])
    return bad({
      code: 'no-table',
      message: 'This is no table of a tree: its first line does not begin with "cause".',
      mend: 'Begin with what "droplight trees table TREE" prints, saved as CSV.',
    });
  const problems: Problem[] = [];
  let changed = file;
  for (const cell of cellsOf(head, rows)) {
    const written = withCell(changed, cell);
    if (written.kind === 'good') changed = written.value;
    else problems.push(placed(firstOf(problemsOf(written)), cell));
  }
  return problems.length > 0 ? bad(...problems) : good(changed);
}

/** Every cell that holds a number of the tree. */
const cellsOf = (head: readonly string[], rows: readonly (readonly string[])[]): readonly Cell[] =>
  rows.flatMap((row) =>
    head.flatMap((column, index): Cell[] =>
      ['cause', 'name', ''].includes(column)
        ? []
        : [{ row: row[0] ?? '', column, text: row[index] ?? '' }],
    ),
  );

const placed = (problem: Problem, { row, column }: Cell): Problem => ({
  ...problem,
  code: 'table-cell',
  message: `Row "${row}", column "${column}": ${problem.message}`,
});

type Cell = { readonly row: string; readonly column: string; readonly text: string };

function withCell(file: TreeFile, cell: Cell): Parsed<TreeFile> {
  const { row, column, text } = cell;
  const check = file.checks[column];
  if (row !== soundRow && row !== unlisted && !Object.hasOwn(file.causes, row))
    return nothing('The tree has no such cause.');
  if (check === undefined && column !== 'odds' && column !== 'minutes')
    return nothing('The tree has no such check.');
  const before = valueAt(file, row, column);
  if (text === showCell(before) || text === varies) return good(file);
  if (check !== undefined) return withChances(file, check, cell);
  const amount = before === undefined ? undefined : readAmount(text);
  return amount === undefined
    ? nothing(`"${text}" is not a number that belongs here.`)
    : good(withNumber(file, { row, column, amount }));
}

function withChances(file: TreeFile, check: Plain, { row, column, text }: Cell): Parsed<TreeFile> {
  const amount = row === soundRow ? readAmount(text) : undefined;
  const value = amount === undefined ? readCell(text, resultsOf(check)) : good(amount);
  if (value.kind === 'bad') return value;
  const kept = text === '' ? undefined : value.value;
  const changed =
    row === soundRow
      ? put(check, 'sound', kept)
      : put(check, 'shows-with', put(rowOf(check), row, kept));
  return good({ ...file, checks: { ...file.checks, [column]: changed } });
}

const nothing = (message: string): Parsed<never> =>
  bad({ code: 'table-cell', message, mend: 'Mend the cell, or take it out of the table.' });

type Amount = { readonly row: string; readonly column: string; readonly amount: number };

function withNumber(file: TreeFile, { row, column, amount }: Amount): TreeFile {
  if (row === unlisted) return { ...file, [unlisted]: amount };
  const cause = file.causes[row] ?? {};
  const changed =
    column === 'odds'
      ? put(cause, 'odds', amount)
      : put(cause, 'repair', put(repairOf(cause), 'minutes', amount));
  return { ...file, causes: { ...file.causes, [row]: changed } };
}

/** An object with one value in its place, or without it. */
function put(object: Plain, key: string, value: unknown): Plain {
  if (value !== undefined) return { ...object, [key]: value };
  const { [key]: _, ...rest } = object;
  return rest;
}
