import { readFileSync } from 'node:fs';

export type Query = { readonly title: string; readonly sql: string };
export type Cell = string | number | boolean | null;

/** The queries of the guide, each with its title; what stands before the first is about the file. */
export const guideQueries = (): readonly Query[] =>
  readFileSync('src/guide/records.sql', 'utf8')
    .split(/\n\n(?=-- )/)
    .slice(1)
    .map((part) => {
      const [first = '', ...rest] = part.trim().split('\n');
      return { title: first.replace('-- ', ''), sql: rest.join('\n').replace(/;$/, '') };
    });

/** A cell as every engine can give it: whole numbers come as text from one and as big ones from another. */
export function plainCell(value: unknown): Cell {
  if (typeof value === 'bigint') return Number(value);
  if (typeof value === 'string')
    return /^-?\d+(\.\d+)?$/.test(value) && !/^\d{4}-/.test(value) ? Number(value) : value;
  if (typeof value === 'number' || typeof value === 'boolean') return value;
  return null;
}

/** Two answers say the same: sums of numbers may be added up in another order. */
export const sameCell = (one: Cell | undefined, other: Cell | undefined): boolean =>
  typeof one === 'number' && typeof other === 'number'
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(one))
    : one === other;
