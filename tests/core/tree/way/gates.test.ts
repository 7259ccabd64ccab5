import { describe, expect, test } from 'vitest';
import type { Tree } from '../../../../src/core/tree/model.ts';
import { gatesOf } from '../../../../src/core/tree/way/gates.ts';
import { shippedTree } from '../../../helpers/library.ts';
import { smallTree } from '../../../helpers/tree.ts';

/** Two looks that are each the check of a safeguard, both made with the engine cranking. */
function guarded(by: readonly (readonly [check: string, engine: 'cranking' | 'running'])[]): Tree {
  const tree = smallTree({ format: 2 });
  const { look, volts } = tree.checks;
  const cranked = { battery: 'connected', engine: 'cranking' } as const;
  return {
    ...tree,
    checks: {
      ...tree.checks,
      ...(look && { look: { ...look, standing: cranked } }),
      ...(volts && { volts: { ...volts, standing: cranked } }),
    },
    safeguards: by.map(([check, engine]) => ({
      before: { engine: [engine] },
      check,
      shows: ['whole'],
      else: 'Not yet.',
    })),
  };
}

const waits = (tree: Tree, id: string): readonly string[] =>
  gatesOf(tree, id)
    .filter(({ kind }) => kind === 'safeguard')
    .map(({ check }) => check);

describe("a safeguard's own check", () => {
  test('waits for the other safeguards before a step with its standing', () => {
    const tree = guarded([
      ['look', 'cranking'],
      ['volts', 'running'],
    ]);

    expect(waits(tree, 'volts')).toEqual(['look']);
  });

  test('never waits for itself, nor for one that waits for it', () => {
    const tree = guarded([
      ['look', 'cranking'],
      ['volts', 'cranking'],
    ]);

    expect(waits(tree, 'look')).toEqual([]);
    expect(waits(tree, 'volts')).toEqual([]);
  });

  test('is not cranked with a knock, on low oil, or on oil nobody looked at', () => {
    expect(waits(shippedTree('oil-pressure'), 'oil-crank')).toEqual([
      'oil-sign',
      'oil-dip',
      'oil-fuel',
      'oil-paper',
    ]);
  });
});
