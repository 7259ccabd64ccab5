type Rows = readonly (readonly string[])[];

/** Cells that need quotes: RFC 4180, and semicolons for spreadsheets that part cells by them. */
const quoted = /[",;\t\r\n]/;

const cell = (text: string): string =>
  quoted.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

/** A table as CSV (RFC 4180): commas, lines ended by CR LF, quotes where a cell needs them. */
export const printCsv = (rows: Rows): string =>
  rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');

/** A quoted cell or a plain one, and what ends it. */
const next = (separator: string): RegExp =>
  new RegExp(
    String.raw`(?:"((?:[^"]|"")*)"|([^"${separator}\r\n][^${separator}\r\n]*|))(${separator}|\r\n|\n|\r|$)`,
    'y',
  );

/**
 * Reads CSV whose cells are parted by commas, semicolons or tabs, as the first line has them.
 * Undefined where a quote is not closed.
 */
export function readCsv(text: string): Rows | undefined {
  const whole = text.replace(/^\ufeff/, '');
  const separator = /[,;\t]/.exec(whole)?.[0] ?? ',';
  const pattern = next(separator);
  const rows: string[][] = [];
  let row: string[] = [];
  while (pattern.lastIndex < whole.length || row.length > 0) {
    const found = pattern.exec(whole);
    if (found === null) return undefined;
    const [, inQuotes, plain = '', end] = found;
    row.push((inQuotes?.replaceAll('""', '"') ?? plain).trim());
    if (end === separator) continue;
    if (row.some((one) => one !== '')) rows.push(row);
    row = [];
  }
  return rows;
}
