import { parquetWriteBuffer, type BasicType, type ColumnSource } from 'hyparquet-writer';
import type { Column, ColumnKind, Row, Table } from '../core/jobs/tables/table.ts';
import { version } from '../core/version.ts';

/** The type that a kind of column has in the file. */
const types: Readonly<Record<ColumnKind, BasicType>> = {
  text: 'STRING',
  time: 'STRING',
  integer: 'INT32',
  real: 'DOUBLE',
  flag: 'BOOLEAN',
};

const columnOf = ({ name, kind }: Column, rows: readonly Row[]): ColumnSource => ({
  name,
  type: types[kind],
  nullable: true,
  data: rows.map((row) => row[name] ?? null),
});

/** A table as a Parquet file: columns of one kind each, compressed; the same rows give the same bytes. */
export const parquetOf = ({ columns }: Table, rows: readonly Row[]): Uint8Array =>
  new Uint8Array(
    parquetWriteBuffer({
      columnData: columns.map((column) => columnOf(column, rows)),
      createdBy: `droplight ${version}`,
    }),
  );

/** The same as JSON Lines: an object a row, its keys in the order of the columns. */
export const linesOf = ({ columns }: Table, rows: readonly Row[]): string =>
  rows
    .map((row) => {
      const cells = columns.map(({ name }) => [name, row[name] ?? null]);
      return `${JSON.stringify(Object.fromEntries(cells))}\n`;
    })
    .join('');
