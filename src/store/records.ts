import { unreadableRow } from '../core/jobs/tables/jobs.ts';
import type { Row } from '../core/jobs/tables/table.ts';
import { tables, tableSession } from '../core/jobs/tables/tables.ts';
import { firstOf } from '../core/problem.ts';
import type { Files } from './files.ts';
import { listSessions } from './find.ts';
import { apartBy, type Progress } from './jobs.ts';
import { loadSession } from './sessions.ts';
import type { Shelf } from './shelf.ts';

/** The rows of every table, by its name. */
export type Rows = ReadonlyMap<string, readonly Row[]>;

/** Reads all sessions of a folder, the oldest name first, into the rows of every table. */
export function rowsIn(files: Files, folder: string, tell: (progress: Progress) => void): Rows {
  const rows = new Map<string, Row[]>(tables.map(({ name }) => [name, []]));
  const add = (name: string, more: readonly Row[]) => void rows.get(name)?.push(...more);
  const listed = listSessions(files, folder).toReversed();
  const shelf: Shelf = new Map();
  for (const [done, { path, name }] of listed.entries()) {
    tell({ done, of: listed.length });
    const read = loadSession(files, path, shelf);
    if (read.kind === 'bad') {
      add('jobs', [unreadableRow(name, apartBy(firstOf(read.problems)))]);
      continue;
    }
    const session = tableSession(name, read.value);
    for (const table of tables) add(table.name, table.rows(session));
  }
  return rows;
}
