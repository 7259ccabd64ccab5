// npm run reference -- FILE: holds the trade figures against a file of reference rows.
import { readFileSync } from 'node:fs';
import { checkRow } from '../tests/reference/check-rows.ts';

const [file = new URL('../tests/reference/check-values.json', import.meta.url)] =
  process.argv.slice(2);
const rows = readRows(file);
const counts = { passed: 0, failed: 0, missed: 0 };

for (const row of rows) {
  const checked = checkRow(row);
  const { kind } = checked;
  if (kind === 'ok') counts.passed += 1;
  else if (kind === 'not covered') counts.missed += 1;
  else counts.failed += 1;
  const figure = checked.figure ?? '-';
  const got = checked.got ?? checked.why;
  const word = kind === 'refused' ? 'FAIL' : kind;
  console.log([row.id, figure, row.expected, got, row.tolerance, word].join('  '));
}

console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.missed} not covered`);
process.exitCode = counts.failed > 0 ? 1 : 0;

function readRows(path) {
  try {
    const found = JSON.parse(readFileSync(path, 'utf8'));
    const list = Array.isArray(found) ? found : found.rows;
    if (!Array.isArray(list)) throw new Error('it holds no list of rows');
    return list;
  } catch (error) {
    console.error(`Cannot read the rows of ${path}: ${error.message}.`);
    process.exit(2);
  }
}
