import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parquetMetadata, parquetReadObjects } from 'hyparquet';
import { expect, test } from 'vitest';
import { unreadableRow } from '../../../../src/core/jobs/tables/jobs.ts';
import type { Row } from '../../../../src/core/jobs/tables/table.ts';
import { tables, tableSession } from '../../../../src/core/jobs/tables/tables.ts';
import { sum } from '../../../../src/core/sum.ts';
import { readSession } from '../../../../src/store/recover.ts';
import { linesOf, parquetOf } from '../../../../src/store/table-files.ts';

const folder = 'sessions/examples';
const sessions = readdirSync(folder)
  .filter((name) => name.endsWith('.jsonl'))
  .map((name) => {
    const read = readSession(readFileSync(join(folder, name)), name);
    if (read.kind === 'bad') throw new Error(name);
    return tableSession(name.replace('.jsonl', ''), read.value);
  });
const rowsOf = (name: string): readonly Row[] =>
  sessions.flatMap((one) => tables.find((table) => table.name === name)?.rows(one) ?? []);

test.each(tables.map((table) => [table.name, table] as const))(
  '%s: every row has every column and no other, of its kind',
  (name, { columns }) => {
    const kinds = {
      text: 'string',
      time: 'string',
      integer: 'number',
      real: 'number',
      flag: 'boolean',
    };
    const rows = rowsOf(name);

    expect(rows.length).toBeGreaterThan(5);
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(columns.map((one) => one.name));
      for (const column of columns)
        expect([kinds[column.kind], 'null']).toContain(
          row[column.name] === null ? 'null' : typeof row[column.name],
        );
    }
  },
);

test.each(tables.map((table) => [table.name, table] as const))(
  '%s: a Parquet file reads back as its lines of JSON, and the same rows give the same bytes',
  async (name, table) => {
    const bytes = parquetOf(table, rowsOf(name));
    const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength);

    const read = await parquetReadObjects({ file: buffer as ArrayBuffer });

    const lines = linesOf(table, rowsOf(name)).trimEnd().split('\n');
    expect(read).toEqual(lines.map((line) => JSON.parse(line) as object));
    expect(parquetOf(table, rowsOf(name))).toEqual(bytes);
    expect(parquetMetadata(buffer as ArrayBuffer).created_by).toMatch(/^droplight \d/);
  },
);

test('a table without a row is a file too', async () => {
  const [table] = tables;
  if (table === undefined) throw new Error('no table');
  const { buffer } = parquetOf(table, []);

  expect(await parquetReadObjects({ file: buffer as ArrayBuffer })).toEqual([]);
});

test('the minutes of a job add up to the time of its story', () => {
  for (const session of sessions) {
    const own = rowsOf('minutes').filter((row) => row['session'] === session.session);
    const { worked, away, gap } = session.story.time;

    expect(sum(own.map((row) => Number(row['minutes'])))).toBeCloseTo(
      (worked + away + gap) / 60,
      6,
    );
  }
});

test('the example that hands the job on has a complaint without a cause', () => {
  const [row] = rowsOf('jobs').filter(({ tree }) => tree === 'charging');

  expect(row).toMatchObject({ counts: true, outcome: 'handed-on', causes: 0 });
});

test('a session that cannot be read has a row with its name and why, and nothing else', () => {
  const { session, counts, apart, ...rest } = unreadableRow('torn-one', 'unreadable');

  expect([session, counts, apart]).toEqual(['torn-one', false, 'unreadable']);
  expect(Object.values(rest).every((value) => value === null)).toBe(true);
});

test('the page of the guide has every column of every table, as they are', () => {
  const page = readFileSync('src/guide/records.md', 'utf8');
  const told = tables.flatMap(({ name, says, columns }) => [
    `### ${name}`,
    `A row is ${says}.`,
    ...columns.map((column) => `| ${column.name} | ${column.kind} | ${column.says} |`),
  ]);

  expect(told.filter((line) => !page.includes(line))).toEqual([]);
});
