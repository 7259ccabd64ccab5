import { batteryRows } from './battery-rows.ts';
import { engineRows } from './engine-rows.ts';
import { fuelRows } from './fuel-rows.ts';
import { otherRows } from './other-rows.ts';
import { asker } from './row.ts';
import type { Family, Row } from './row.ts';
import { wireRows } from './wire-rows.ts';

const families: readonly Family[] = [
  ...wireRows,
  ...batteryRows,
  ...engineRows,
  ...fuelRows,
  ...otherRows,
];

/** What became of a row. */
export type Checked =
  | { readonly kind: 'ok' | 'FAIL'; readonly figure: string; readonly got: number }
  | { readonly kind: 'refused'; readonly figure: string; readonly why: string }
  | { readonly kind: 'not covered'; readonly why: string };

/**
 * Room for the last digits of a double where a row allows none: a table value that went through a
 * unit and back. Nothing that a person could read differs by so little.
 */
const lastDigits = 1e-12;

/** Answers a row through its family's figure and holds the answer against the expected value. */
export function checkRow(row: Row): Checked {
  const family = families.find((each) => each.ids.test(row.id));
  if (family === undefined) return { kind: 'not covered', why: 'no figure for this family' };
  let figure = '';
  const ask = asker(row);
  try {
    const got = family.answer(
      row,
      (name, texts, output) => {
        figure = output === undefined || output === 'result' ? name : `${name}.${output}`;
        return ask(name, texts, output);
      },
      tailOf(row.id, family),
    );
    if (got === undefined) return { kind: 'not covered', why: 'the row names nothing to ask' };
    return { kind: isClose(got, row) ? 'ok' : 'FAIL', figure, got };
  } catch (error) {
    return { kind: 'refused', figure, why: error instanceof Error ? error.message : 'no answer' };
  }
}

/** The words of an id behind what makes its family: `cond.limit.pos` is `pos` of the limits. */
function tailOf(id: string, family: Family): readonly string[] {
  const [head = ''] = family.ids.exec(id) ?? [];
  return id.slice(head.length).replace(/^\./, '').split('.');
}

function isClose(got: number, row: Row): boolean {
  const room = row.tolerance + lastDigits * Math.max(1, Math.abs(row.expected));
  return Math.abs(got - row.expected) <= room;
}
