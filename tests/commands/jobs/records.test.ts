import { appendFileSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { records } from '../../../src/commands/jobs/records.ts';
import { runCommand } from '../../helpers/commands.ts';
import { exampleShop } from '../../helpers/shop-folder.ts';

const rows = (folder: string, table: string) =>
  readFileSync(join(folder, 'tables', `${table}.jsonl`), 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line) as Record<string, unknown>);

test('writes each table as Parquet and as lines, and says how many rows', async () => {
  const folder = exampleShop();

  const { out, code } = await runCommand(records, ['--out', 'tables'], { folder });

  expect(code).toBe(0);
  expect(out).toContain(`${join(folder, 'tables', 'jobs')}.parquet, .jsonl: 7 rows`);
  expect(readdirSync(join(folder, 'tables'))).toHaveLength(10);
});

test('what is damaged or cannot be read is there, and marked as not counting', async () => {
  const folder = exampleShop();
  const sessions = join(folder, 'sessions');
  const [torn = ''] = readdirSync(sessions);
  appendFileSync(join(sessions, torn), '{"n":99,"kind"');
  writeFileSync(join(sessions, 'a-letter.jsonl'), 'Dear shop,\n');

  await runCommand(records, ['--out', 'tables'], { folder });

  const apart = rows(folder, 'jobs').filter(({ counts }) => counts === false);
  expect(apart.map((row) => [row['session'], row['apart']])).toEqual([
    [torn.replace('.jsonl', ''), 'torn'],
    ['a-letter', 'unreadable'],
  ]);
  expect(rows(folder, 'findings').some(({ counts }) => counts === false)).toBe(true);
});

test.each([
  [['--out', 'sessions'], 'The tables would lie among the sessions'],
  [[], 'This command wants a folder to write to'],
])('refuses %j', async (args, said) => {
  const { code, err } = await runCommand(records, args, { folder: exampleShop() });

  expect(code).toBe(2);
  expect(err).toContain(said);
});

test('tables that are there are written over only where that is wanted', async () => {
  const folder = exampleShop();
  await runCommand(records, ['--out', 'tables'], { folder });

  const again = await runCommand(records, ['--out', 'tables'], { folder });
  const forced = await runCommand(records, ['--out', 'tables', '--force', '--json'], { folder });

  expect(again.code).toBe(2);
  expect(again.err).toContain('There is a file jobs.parquet in that folder already.');
  expect(JSON.parse(forced.out)).toMatchObject({ tables: { jobs: 7 } });
});
