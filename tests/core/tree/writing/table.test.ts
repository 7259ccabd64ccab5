import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseJson } from '../../../../src/core/tree/json/read.ts';
import { parseTreeValue } from '../../../../src/core/tree/parse.ts';
import { printCsv, readCsv } from '../../../../src/core/tree/writing/csv.ts';
import { printTable, withTable, type TreeFile } from '../../../../src/core/tree/writing/table.ts';
import { upgrade } from '../../../../src/core/tree/written/upgrade.ts';

const shipped = readdirSync('trees').filter(
  (name) => name.endsWith('.json') && !/schema|shop/.test(name),
);

/** A shipped tree in the words of format 2. */
function fileNamed(name: string): TreeFile {
  const json = parseJson(readFileSync(`trees/${name}`, 'utf8'), name);
  if (json.kind === 'bad') throw new Error(name);
  const tree = parseTreeValue(json.value, name);
  if (tree.kind === 'bad') throw new Error(name);
  return upgrade(json.value as TreeFile, tree.value) as TreeFile;
}

/** A file without the numbers that a table holds. */
const emptied = (file: TreeFile): TreeFile => ({
  ...file,
  checks: Object.fromEntries(
    Object.entries(file.checks).map(([id, { 'shows-with': _, sound: __, ...check }]) => [
      id,
      check,
    ]),
  ),
});

test.each(shipped)('the table of %s put back gives the same tree', (name) => {
  const file = fileNamed(name);

  expect(withTable(file, printTable(file))).toEqual({ kind: 'good', value: file });
});

test.each(shipped)(
  'every chance of %s is read from the table alone, also with decimal commas',
  (name) => {
    const file = fileNamed(name);
    const rows = readCsv(printTable(file)) ?? [];
    if (rows.some((row) => row.includes('(by vehicle)'))) return;
    const commas = rows.map((row, at) =>
      at === 0
        ? row
        : row.map((one, column) => (column === 1 ? one : one.replaceAll(/(\d)\.(\d)/g, '$1,$2'))),
    );
    const semicolons = commas.map((row) => row.map((one) => `"${one}"`).join(';')).join('\n');

    const back = withTable(emptied(file), semicolons);

    expect(back.kind === 'good' && chances(back.value)).toEqual(chances(file));
  },
);

const chances = (file: TreeFile) =>
  Object.fromEntries(
    Object.entries(file.checks).map(([id, check]) => [
      id,
      {
        sound: check['sound'],
        rows: check['shows-with'] ?? {},
      },
    ]),
  );

test('a table that cannot be read is told cell by cell, by row and column', () => {
  const file = fileNamed('charging.json');
  const [check = ''] = Object.keys(file.checks).slice(1);
  const [cause = ''] = Object.keys(file.causes);
  const csv = `cause,name,odds,minutes,${check},elsewhere\r\n${cause},,many,5 h,dead as mutton,1\r\nnobody,,1,1,,\r\n`;

  const read = withTable(file, csv);

  expect(read.kind === 'bad' && read.problems.map(({ message }) => message)).toEqual([
    `Row "${cause}", column "odds": "many" is not a number that belongs here.`,
    `Row "${cause}", column "minutes": "5 h" is not a number that belongs here.`,
    `Row "${cause}", column "${check}": "dead as mutton" is not a result with a percent or a word behind it.`,
    `Row "${cause}", column "elsewhere": The tree has no such check.`,
    ...['odds', 'minutes', check, 'elsewhere'].map(
      (column) => `Row "nobody", column "${column}": The tree has no such cause.`,
    ),
  ]);
});

test('CSV as RFC 4180 has it: quotes, commas and line ends within a cell', () => {
  // RFC 4180, section 2, rules 5 to 7; its own examples.
  expect(readCsv('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
    ['aaa', 'b\r\nbb', 'ccc'],
    ['zzz', 'yyy', 'xxx'],
  ]);
  expect(readCsv('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  expect(readCsv('"aaa","b')).toBeUndefined();
  const rows = [
    ['a', 'b, "c"\n'.trim(), ''],
    ['d; e', '', 'f'],
  ];
  expect(readCsv(printCsv(rows))).toEqual(rows);
});

test('what is no table is told', () => {
  expect(withTable(fileNamed('charging.json'), 'hello')).toMatchObject({
    problems: [{ code: 'no-table' }],
  });
});
