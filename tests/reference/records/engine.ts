import type { Cell } from '../../helpers/queries.ts';
import { plainCell } from '../../helpers/queries.ts';

/*
 * Outside check: @duckdb/node-api (MIT), an embedded engine for SQL. It is large, so it is installed on
 * its own: npm install --prefix tests/reference/records
 */
const name = '@duckdb/node-api';

type Reader = {
  readonly columnNames: () => readonly string[];
  readonly getRows: () => readonly (readonly unknown[])[];
};
type Connection = {
  readonly run: (sql: string) => Promise<unknown>;
  readonly runAndReadAll: (sql: string) => Promise<Reader>;
};
type Module = {
  readonly version: () => string;
  readonly DuckDBInstance: {
    readonly create: (path: string) => Promise<{ readonly connect: () => Promise<Connection> }>;
  };
};

export const engine = await import(name).then(
  (module: Module) => module,
  () => undefined,
);
if (engine === undefined)
  process.stderr.write(
    `${name} is not installed, so the tables are not read by it: npm install --prefix tests/reference/records\n`,
  );

export type Ask = (sql: string) => Promise<readonly (readonly Cell[])[]>;

/** An engine that reads the tables of a folder, each under its own name. */
export async function reading(
  { DuckDBInstance }: Module,
  folder: string,
  tables: readonly string[],
): Promise<Ask> {
  const instance = await DuckDBInstance.create(':memory:');
  const connection = await instance.connect();
  for (const table of tables)
    await connection.run(
      `create view ${table} as select * from read_parquet('${folder}/${table}.parquet')`,
    );
  return async (sql) =>
    (await connection.runAndReadAll(sql)).getRows().map((row) => row.map(plainCell));
}
