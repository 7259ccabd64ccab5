import { join, resolve } from 'node:path';
import { tables } from '../../core/jobs/tables/tables.ts';
import { bad, good, type Parsed } from '../../core/problem.ts';
import { cleanRow, count } from '../../core/text.ts';
import { attempt, type Files } from '../../store/files.ts';
import { makeOwnFolder } from '../../store/folder.ts';
import { rowsIn, type Rows } from '../../store/records.ts';
import { linesOf, parquetOf } from '../../store/table-files.ts';
import { writeWhole } from '../../store/whole-file.ts';
import { done, printJson, type Ended, type Io } from '../io.ts';
import { absolute, readOptions, sessionsFolder, wrongUse, type Given } from '../options.ts';
import { callOf, uses } from '../uses.ts';
import { teller } from '../program/progress.ts';

/** `droplight records --out DIR`: all sessions as tables, each as Parquet and as JSON Lines. */
export async function records(io: Io, args: readonly string[]): Promise<Ended> {
  const given = readOptions(args, uses.records.options);
  if (given.kind === 'bad') return given;
  const folder = sessionsFolder(io, given.value);
  const out = outFolder(io, given.value, folder);
  if (out.kind === 'bad') return out;
  const rows = readRows(io, folder);
  if (rows.kind === 'bad') return rows;
  const written = attempt(out.value, () => writeTables(io.disk.files, out.value, rows.value));
  if (written.kind === 'bad') return written;
  if (given.value.flag('json'))
    printJson(io, { folder, out: out.value, tables: Object.fromEntries(written.value) });
  else
    for (const [name, rowCount] of written.value)
      io.out(
        `${cleanRow(`${join(out.value, name)}.parquet, .jsonl: ${count(rowCount, 'row')}`)}\n`,
      );
  return done;
}

const names = tables.flatMap(({ name }) => [`${name}.parquet`, `${name}.jsonl`]);

/** Where the tables go: never among the sessions, and over nothing that is there unless that is wanted. */
function outFolder(io: Io, given: Given, sessions: string): Parsed<string> {
  const named = given.text('out') ?? '';
  if (named === '' || given.words.length > 0)
    return wrongUse(
      'This command wants a folder to write to, and no other word.',
      callOf('records'),
    );
  const out = absolute(io, named);
  const { files } = io.disk;
  if (resolve(out) === resolve(sessions))
    return bad({
      code: 'among-sessions',
      value: out,
      message: 'The tables would lie among the sessions, and be taken for some.',
      mend: 'Give another folder to --out.',
    });
  const there = names.find((name) => files.exists(join(out, name)));
  if (there !== undefined && !given.flag('force'))
    return bad({
      code: 'table-there',
      file: join(out, there),
      message: `There is a file ${there} in that folder already.`,
      mend: 'Give another folder, or --force to write the tables anew.',
    });
  return good(out);
}

function readRows(io: Io, folder: string): Parsed<Rows> {
  const { tell, end } = teller(io, 'Reading sessions');
  const rows = attempt(folder, () => rowsIn(io.disk.files, folder, tell));
  end();
  return rows;
}

/** Each file whole or not at all; how many rows each table has. */
function writeTables(
  files: Files,
  out: string,
  rows: Rows,
): readonly (readonly [string, number])[] {
  makeOwnFolder(files, out);
  return tables.map((table) => {
    const own = rows.get(table.name) ?? [];
    writeWhole(files, join(out, `${table.name}.parquet`), parquetOf(table, own));
    writeWhole(files, join(out, `${table.name}.jsonl`), linesOf(table, own));
    return [table.name, own.length] as const;
  });
}
