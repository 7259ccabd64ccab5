// npm run engines: the queries of the guide on two general engines, over one generated shop. The second
// is the embedded form of one that also runs as a cluster; it weighs some 450 MB, so it is fetched into a
// folder of its own and no test needs it. Writes the table of src/guide/records.md.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { tables } from '../src/core/jobs/tables/tables.ts';
import { rowsIn } from '../src/store/records.ts';
import { nodeFiles } from '../src/store/node-files.ts';
import { linesOf, parquetOf } from '../src/store/table-files.ts';
import { engine, reading } from '../tests/reference/records/engine.ts';
import { guideQueries, plainCell, sameCell } from '../tests/helpers/queries.ts';
import { generateShop } from '../tests/helpers/shop-folder.ts';
import { root } from './setup.mjs';

const wanted = 'chdb@3.4.0';
const jobs = 400;
const scratch = process.argv[2] ?? join(tmpdir(), 'droplight-engines');

function fetched() {
  const folder = join(scratch, 'engine');
  if (!existsSync(join(folder, 'node_modules', 'chdb'))) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), '{"private":true}');
    process.stderr.write(`Fetching ${wanted} (some 450 MB) ...\n`);
    const args = ['install', '--no-audit', '--no-fund', '--loglevel=error', wanted];
    if (spawnSync('npm', args, { cwd: folder, stdio: 'inherit' }).status !== 0)
      throw new Error(`${wanted} could not be fetched`);
  }
  return createRequire(join(folder, 'package.json'))('chdb');
}

/** Tables of a generated shop, made anew. */
function makeTables() {
  const [sessions, out] = [join(scratch, 'sessions'), join(scratch, 'tables')];
  for (const folder of [sessions, out]) rmSync(folder, { recursive: true, force: true });
  mkdirSync(out, { recursive: true });
  generateShop(sessions, jobs);
  const rows = rowsIn(nodeFiles, sessions, () => {});
  for (const table of tables) {
    const own = rows.get(table.name) ?? [];
    writeFileSync(join(out, `${table.name}.parquet`), parquetOf(table, own));
    writeFileSync(join(out, `${table.name}.jsonl`), linesOf(table, own));
  }
  return out;
}

/** The second engine over the files of a folder, each under its own name. */
function readingToo({ Session }, out) {
  const session = new Session();
  session.query('create database shop');
  for (const { name } of tables)
    session.query(
      `create view shop.${name} as select * from file('${out}/${name}.parquet', Parquet)`,
    );
  session.query('use shop');
  return (sql) => {
    const said = session.query(sql, 'JSONCompactEachRow');
    return said
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => JSON.parse(line).map(plainCell));
  };
}

if (engine === undefined) throw new Error('npm install --prefix tests/reference/records');
const out = makeTables();
const first = await reading(
  engine,
  out,
  tables.map(({ name }) => name),
);
const chdb = fetched();
const second = readingToo(chdb, out);
const versions = [engine.version(), second('select version()')[0][0]];

const lines = [];
let unlike = 0;
for (const { title, sql } of guideQueries()) {
  const [one, other] = [await first(sql), second(sql)];
  const same =
    one.length === other.length &&
    one.every((row, at) => row.every((cell, place) => sameCell(cell, other[at][place])));
  if (!same) {
    unlike += 1;
    process.stderr.write(`${title}\n${JSON.stringify(one)}\n${JSON.stringify(other)}\n`);
  }
  lines.push(
    `| ${title} | ${one.length} | ${other.length} | ${same ? 'the same' : 'NOT the same'} |`,
  );
}
const page = join(root, 'src', 'guide', 'records.md');
const text = readFileSync(page, 'utf8');
const heading = '## The same answers by two engines\n';
const told = `
\`npm run engines\` makes ${jobs} jobs of a shop, writes the tables and asks [records.sql](records.sql) of two general engines: one
embedded (@duckdb/node-api, engine ${versions[0]}; \`npm test\` asks it too), and the embedded form of one that also runs as a cluster
(${wanted}, engine ${versions[1]}). The same means every cell of every row, numbers to a billionth.

| question | rows | rows | cells |
| --- | --- | --- | --- |
${lines.join('\n')}
`;
writeFileSync(page, text.slice(0, text.indexOf(heading) + heading.length) + told);
process.stdout.write(`${told}\n`);
process.exit(unlike === 0 ? 0 : 1);
