import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { records } from '../../../src/commands/jobs/records.ts';
import { history } from '../../../src/commands/jobs/history.ts';
import type { History } from '../../../src/core/jobs/history.ts';
import { tables } from '../../../src/core/jobs/tables/tables.ts';
import { runCommand, scratch } from '../../helpers/commands.ts';
import { guideQueries, sameCell, type Cell } from '../../helpers/queries.ts';
import { generateShop } from '../../helpers/shop-folder.ts';
import { engine, reading, type Ask } from './engine.ts';

const folder = scratch();
const out = join(folder, 'tables');
const names = tables.map(({ name }) => name);

describe.skipIf(engine === undefined)('the tables, read by an engine of other hands', () => {
  let ask: Ask;
  beforeAll(async () => {
    generateShop(join(folder, 'sessions'), 120, { trees: ['no-supply', 'charging', 'rough-idle'] });
    await runCommand(records, ['--out', out], { folder });
    if (engine !== undefined) ask = await reading(engine, out, names);
  });

  test.each(tables.map((table) => [table.name, table] as const))(
    '%s: each cell as the lines of JSON have it',
    async (name, { columns }) => {
      const lines = readFileSync(join(out, `${name}.jsonl`), 'utf8')
        .trimEnd()
        .split('\n');
      const rows = lines.map((line) => JSON.parse(line) as Record<string, Cell>);

      const read = await ask(`select ${columns.map((one) => one.name).join(', ')} from ${name}`);

      expect(rows.length).toBeGreaterThan(50);
      expect(read).toHaveLength(rows.length);
      const unlike = rows.flatMap((row, at) =>
        columns
          .filter(({ name: column }, place) => !sameCell(read[at]?.[place], row[column]))
          .map((column) => `${name} ${at} ${column.name}`),
      );
      expect(unlike).toEqual([]);
    },
  );

  test.each(guideQueries().map((query) => [query.title, query.sql]))(
    'answers: %s',
    async (_, sql) => {
      expect((await ask(sql ?? '')).length).toBeGreaterThan(0);
    },
  );

  test('counts what the history counts', async () => {
    const told = await runCommand(history, ['--json'], { folder });
    const all = JSON.parse(told.out) as History;
    const counted = await ask(
      'select tree, cause, sum(weight) as jobs from repairs where counts and weight > 0 group by tree, cause order by tree, cause',
    );

    const expected = all.complaints
      .flatMap(({ causes }) => causes.map(({ tree, cause, jobs }) => [tree, cause, jobs]))
      .toSorted((one, other) => (String(one) < String(other) ? -1 : 1));
    expect(counted.map((row) => row.slice(0, 2))).toEqual(expected.map((row) => row.slice(0, 2)));
    expect(counted.filter((row, at) => !sameCell(row[2], expected[at]?.[2] as Cell))).toEqual([]);
  });
});
