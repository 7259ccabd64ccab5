import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkRow } from './check-rows.ts';
import type { Row } from './row.ts';

const file = new URL('./check-values.json', import.meta.url);
const rows: readonly Row[] = JSON.parse(readFileSync(file, 'utf8'));

// Each title tells where the expected value comes from and how it was come by there: `read` in a
// copy of the source, `memory`, or `common-practice` with no source.
const named = rows.map((row) => ({ ...row, row }));

describe('figures against the reference rows', () => {
  test.each(named)('$id: $quantity [$kind, $provenance: $source]', ({ row }) => {
    const checked = checkRow(row);

    expect(checked).toMatchObject({ kind: 'ok' });
  });
});

describe('the reference check itself', () => {
  const row: Row = {
    id: 'cond.bad.9',
    quantity: 'Drop in a joint',
    formula: 'V = I R',
    inputs: { I_A: 100, R_ohm: 0.01 },
    expected: 1,
    tolerance: 1e-9,
    unit: 'V',
    source: "Ohm's law",
    provenance: 'memory',
    kind: 'computed',
  };

  test('a right value passes and a wrong one fails, with what the figure gave', () => {
    expect(checkRow(row)).toMatchObject({ kind: 'ok', figure: 'joint-heat.drop' });
    expect(checkRow({ ...row, expected: 1.001 })).toMatchObject({ kind: 'FAIL', got: 1 });
  });

  test('a family without a figure is not covered', () => {
    expect(checkRow({ ...row, id: 'paint.gloss.1' }).kind).toBe('not covered');
    expect(checkRow({ ...row, id: 'cond.limit.unheard' }).kind).toBe('not covered');
  });

  test('inputs that a figure refuses are a failure with the reason', () => {
    const refused = checkRow({ ...row, inputs: { I_A: 1e6, R_ohm: 1 } });

    expect(refused).toMatchObject({ kind: 'refused', figure: 'joint-heat.drop' });
  });
});
